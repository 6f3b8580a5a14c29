using System.Text;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.Designs;

/// <summary>
/// Designs as rows. Numbers and texts have a column each; steps and materials are JSON in a cell, so a sheet has a whole design. A
/// column that a sheet does not have stays as it is stored.
/// </summary>
public static class DesignSheet
{
    public const string Sku = "sku";

    /// <summary>Each column and the place of its value in the document.</summary>
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
        ("developmentHours", ["development", "hours"], Cell.Number),
        ("developmentCost", ["development", "cost"], Cell.Number),
        ("developmentPieces", ["development", "pieces"], Cell.Number),
        ("soldShare", ["soldShare"], Cell.Number),
        ("aliases", ["aliases"], Cell.Names),
    ];

    /// <summary>How a cell is read and written; spaces around a name are part of it.</summary>
    public enum Cell { Name, Text, Number, Json, Names }

    public static async Task WriteAsync(HttpContext context, SheetDialect dialect, IEnumerable<Revision> designs)
    {
        using var sheet = new SheetDocument(context.Response.BodyWriter, dialect, [Sku, .. Columns.Select(column => column.Name)]);
        foreach (var design in designs)
        {
            var document = JsonNode.Parse(design.Body!)!; // as stored: with the decimals of its own currency
            sheet.Text(design.Key);
            foreach (var (_, path, kind) in Columns)
            {
                var value = path.Aggregate((JsonNode?)document, (node, name) => node?[name]);
                if (value is null || value is JsonArray { Count: 0 })
                    sheet.Empty();
                else if (kind == Cell.Number)
                    sheet.Number(Rounding.Trim(value.GetValue<decimal>()));
                else
                    sheet.Text(kind switch
                    {
                        Cell.Json => value.ToJsonString(WireJson.Options),
                        Cell.Names => ListCell.Of([.. value.AsArray().Select(name => name!.GetValue<string>())]),
                        _ => value.GetValue<string>(),
                    });
            }

            sheet.EndRow();
            if (sheet.IsFull)
                await AnswerBlocks.InTime(sheet.FlushAsync(context.RequestAborted), context);
        }

        await AnswerBlocks.InTime(sheet.FlushAsync(context.RequestAborted), context);
    }

    /// <summary>The row laid over the stored design, whose values stay if the sheet has no such column; or the fault of a cell.</summary>
    public static (RecordBuilder<Design>? Design, InputError? Fault) Over(Design? stored, SheetRow row, SheetPlaces places,
        SheetDialect dialect)
    {
        var design = new RecordBuilder<Design>(stored);
        foreach (var column in Columns)
            if (places.Of(column.Name) is { } at
                && Put(design, column, column.Kind == Cell.Name ? row.Text(at) : row.Cell(at), dialect) is var (code, detail))
            {
                var (line, place) = row.PlaceOf(at);
                return (null, new InputError { Parameter = column.Name, Code = code, Detail = detail, Line = line, Column = place });
            }

        return (design, null);
    }

    private static (Code Code, string Detail)? Put(RecordBuilder<Design> design, (string Name, string[] Path, Cell Kind) column,
        ReadOnlySpan<byte> cell, SheetDialect dialect)
    {
        if (cell.IsEmpty)
            design.Set(column.Path, null);
        else if (column.Kind == Cell.Number)
        {
            var (number, code, detail) = SheetNumber.Read(cell, column.Name, null, dialect, BodySchema.NumberAt(typeof(Design), column.Path));
            if (code is not null)
                return (code, detail!);
            design.Set(column.Path, number);
        }
        else if (column.Kind is Cell.Text or Cell.Name)
            design.Set(column.Path, Encoding.UTF8.GetString(cell));
        else
        {
            var (json, fault) = ListCell.Read(cell, column.Name, column.Kind == Cell.Names);
            if (fault is not null)
                return fault;
            design.SetJson(column.Path, json);
        }

        return null;
    }
}
