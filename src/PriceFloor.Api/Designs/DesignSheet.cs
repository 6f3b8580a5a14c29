using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.Designs;

/// <summary>
/// Designs as rows. Numbers and texts have a column each; lists (steps, materials, aliases) stand in a cell as JSON, so that a sheet holds a
/// whole design. A column that a sheet does not have is left as it is stored.
/// </summary>
public static class DesignSheet
{
    public const string Sku = "sku";

    /// <summary>Each column and where in the document its value stands.</summary>
    public static readonly IReadOnlyList<(string Name, string[] Path, Cell Kind)> Columns =
    [
        ("name", ["name"], Cell.Name),
        ("profile", ["profile"], Cell.Text),
        ("piecesPerDay", ["making", "piecesPerDay"], Cell.Number),
        ("piecesPerBenchDay", ["making", "piecesPerBenchDay"], Cell.Number),
        ("minutesPerPiece", ["making", "minutesPerPiece"], Cell.Number),
        ("steps", ["making", "steps"], Cell.Json),
        ("goodShare", ["making", "goodShare"], Cell.Number),
        ("setupMinutes", ["making", "setupMinutes"], Cell.Number),
        ("runSize", ["making", "runSize"], Cell.Number),
        ("materials", ["materials"], Cell.Json),
        ("secondsShare", ["seconds", "share"], Cell.Number),
        ("secondsPrice", ["seconds", "price"], Cell.Number),
        ("soldShare", ["soldShare"], Cell.Number),
        ("aliases", ["aliases"], Cell.Json),
    ];

    /// <summary>How a cell is read and written; spaces around a name belong to it.</summary>
    public enum Cell { Name, Text, Number, Json }

    public static async Task WriteAsync(HttpContext context, SheetDialect dialect, IEnumerable<Revision> designs)
    {
        using var sheet = new SheetDocument(context.Response.BodyWriter, dialect, [Sku, .. Columns.Select(column => column.Name)]);
        foreach (var design in designs)
        {
            var document = JsonNode.Parse(design.Body!)!; // as it is stored: with the decimals of its own currency
            sheet.Text(design.Key);
            foreach (var (_, path, kind) in Columns)
            {
                var value = path.Aggregate((JsonNode?)document, (node, name) => node?[name]);
                if (value is null || value is JsonArray { Count: 0 })
                    sheet.Empty();
                else if (kind == Cell.Number)
                    sheet.Number(Rounding.Trim(value.GetValue<decimal>()));
                else
                    sheet.Text(kind == Cell.Json ? value.ToJsonString(WireJson.Options) : value.GetValue<string>());
            }

            sheet.EndRow();
            if (sheet.IsFull)
                await AnswerBlocks.InTime(sheet.FlushAsync(context.RequestAborted), context);
        }

        await AnswerBlocks.InTime(sheet.FlushAsync(context.RequestAborted), context);
    }

    /// <summary>
    /// The row as the JSON text of a design, laid over what is stored where the sheet has no such column; or what is wrong with a cell.
    /// </summary>
    public static (byte[]? Text, InputError? Fault) ToJson(SheetRow row, IReadOnlyDictionary<string, int> places, SheetDialect dialect,
        Stored<Design>? stored)
    {
        var document = stored is null ? [] : (JsonObject)JsonNode.Parse(WireJson.WriteDocument(stored.Document, Currency.Of("USD")))!;
        foreach (var (name, path, kind) in Columns)
        {
            if (!places.TryGetValue(name, out var at))
                continue;
            var (value, code, detail) = ValueOf(kind == Cell.Name ? row.Text(at) : row.Cell(at), name, kind, dialect);
            if (code is not null)
            {
                var (line, column) = row.PlaceOf(at);
                return (null, new InputError { Parameter = name, Code = code, Detail = detail!, Line = line, Column = column });
            }

            Put(document, path, value);
        }

        if (document["seconds"] is JsonObject seconds && seconds["price"] is null && seconds["share"] is null)
            document.Remove("seconds");
        return (Encoding.UTF8.GetBytes(document.ToJsonString(WireJson.Options)), null);
    }

    private static (JsonNode? Value, Code? Code, string? Detail) ValueOf(ReadOnlySpan<byte> cell, string name, Cell kind, SheetDialect dialect)
    {
        if (cell.IsEmpty)
            return default;
        if (kind == Cell.Number)
        {
            var (number, code, detail) = SheetNumber.Read(cell, name, null, dialect);
            return code is null ? (JsonValue.Create(number), null, null) : (null, code, detail);
        }

        var text = Encoding.UTF8.GetString(cell);
        if (kind is Cell.Text or Cell.Name)
            return (JsonValue.Create(text), null, null);
        try
        {
            if (!JsonText.IsWhole(cell))
                return (null, InputCodes.Malformed, $"{name}: {JsonText.HalfAPair}");
            return JsonNode.Parse(text) is JsonArray list
                ? (list, null, null)
                : (null, InputCodes.NotAList, $"{name} must be a JSON list in square brackets, as an export writes it.");
        }
        catch (JsonException)
        {
            return (null, InputCodes.Malformed, $"{name} is not JSON; give a list in square brackets, as an export writes it.");
        }
    }

    private static void Put(JsonObject document, string[] path, JsonNode? value)
    {
        if (path.Length > 1 && document[path[0]] is not JsonObject)
        {
            if (value is null)
                return;
            document[path[0]] = new JsonObject();
        }

        var parent = path.Length > 1 ? (JsonObject)document[path[0]]! : document;
        if (value is null)
            parent.Remove(path[^1]);
        else
            parent[path[^1]] = value;
    }
}
