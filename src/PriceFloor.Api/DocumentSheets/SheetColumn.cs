using System.Globalization;
using System.Text;
using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>A field of a record as a column of a sheet; the fields of an object in it have its name before theirs: stallCost.</summary>
internal sealed class SheetColumn
{
    private readonly IReadOnlyList<BodySchema.Member> _members;
    private readonly string[] _path;

    private SheetColumn(IReadOnlyList<BodySchema.Member> members)
    {
        (_members, _path) = (members, [.. members.Select(member => member.Name)]);
        Name = _path[0] + string.Concat(_path[1..].Select(part => char.ToUpperInvariant(part[0]) + part[1..]));
        Pointer = "#/" + string.Join('/', _path);
    }

    public string Name { get; }

    /// <summary>Its place in the record.</summary>
    public string Pointer { get; }

    /// <summary>Columns for every field of a record, in the order of the contract.</summary>
    /// <param name="record">The type of the record.</param>
    /// <param name="leftOut">A list that has a sheet of its own.</param>
    public static IReadOnlyList<SheetColumn> Of(Type record, string? leftOut = null) =>
        [.. Below((BodySchema.Members)BodySchema.Of(record), []).Where(column => column.Name != leftOut)];

    public void Write(SheetDocument sheet, object record)
    {
        switch (_members.Aggregate((object?)record, (value, member) => value is null ? null : member.Of(value)))
        {
            case null:
                sheet.Empty();
                break;
            case decimal number:
                sheet.Number(Rounding.Trim(number));
                break;
            case string text:
                sheet.Text(text);
                break;
            case bool flag:
                sheet.Text(flag ? "true" : "false");
                break;
            case DateOnly day:
                sheet.Text(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
                break;
            case Enum word:
                sheet.Text(JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString()));
                break;
            case var list:
                sheet.Text(JsonSerializer.Serialize(list, WireJson.Options));
                break;
        }
    }

    /// <summary>Sets the field from a cell; an empty cell gives the default back. What the cell may say is checked with the record.</summary>
    public (Code Code, string Detail)? Put<T>(RecordBuilder<T> record, SheetRow row, int at, SheetDialect dialect) where T : class
    {
        var cell = row.Cell(at);
        var schema = _members[^1].BodySchema();
        if (cell.IsEmpty)
            record.Set(_path, null);
        else if (schema is BodySchema.Text)
            record.Set(_path, Encoding.UTF8.GetString(row.Text(at)));
        else if (schema is BodySchema.Number)
        {
            var (number, code, detail) = SheetNumber.Read(cell, Name, null, dialect);
            if (code is not null)
                return (code, detail!);
            record.Set(_path, number);
        }
        else
            record.SetJson(_path, JsonOf(cell, schema));
        return null;
    }

    /// <summary>A word, a day or a yes or no as JSON; spreadsheets write TRUE. A list is JSON in its cell.</summary>
    private static byte[] JsonOf(ReadOnlySpan<byte> cell, BodySchema schema)
    {
        var text = Encoding.UTF8.GetString(cell);
        return schema is BodySchema.Array ? Encoding.UTF8.GetBytes(text)
            : schema is BodySchema.Boolean && bool.TryParse(text, out var flag) ? JsonSerializer.SerializeToUtf8Bytes(flag)
            : JsonSerializer.SerializeToUtf8Bytes(text);
    }

    private static IEnumerable<SheetColumn> Below(BodySchema.Members schema, IReadOnlyList<BodySchema.Member> before) =>
        schema.All.SelectMany(member => member.BodySchema() is BodySchema.Members inner
            ? Below(inner, [.. before, member])
            : [new SheetColumn([.. before, member])]);
}
