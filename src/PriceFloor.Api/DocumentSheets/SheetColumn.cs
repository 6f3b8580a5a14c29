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

    private SheetColumn(IReadOnlyList<BodySchema.Member> members, string? without)
    {
        (_members, _path) = (members, [.. members.Select(member => member.Name)]);
        var named = _path.Length > 1 && _path[0] == without ? _path[1..] : _path;
        Name = named[0] + string.Concat(named[1..].Select(part => char.ToUpperInvariant(part[0]) + part[1..]));
        Pointer = "#/" + string.Join('/', _path);
    }

    public string Name { get; }

    /// <summary>Its place in the record.</summary>
    public string Pointer { get; }

    /// <summary>Columns for every field of a record, in the order of the contract.</summary>
    /// <param name="record">The type of the record.</param>
    /// <param name="leftOut">The columns of lists that have a sheet of their own.</param>
    /// <param name="without">An object whose name its fields go without.</param>
    public static IReadOnlyList<SheetColumn> Of(Type record, IReadOnlyList<string>? leftOut = null, string? without = null) =>
        [.. Below((BodySchema.Members)BodySchema.Of(record), [], without).Where(column => leftOut?.Contains(column.Name) != true)];

    /// <summary>Its value in words: what kind of cell it is, and which type and member of the contract it is.</summary>
    public (BodySchema Schema, string Type, string Member) About =>
        (_members[^1].BodySchema(), _members[^1].Property.DeclaringType!.Name, _members[^1].Name);

    public void Write(ISheetCells sheet, object record)
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
                sheet.Flag(flag);
                break;
            case DateOnly day:
                sheet.Day(day);
                break;
            case Enum word:
                sheet.Text(JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString()));
                break;
            case IReadOnlyList<string> names:
                sheet.Text(ListCell.Of(names));
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
        else if (schema is BodySchema.Number { Field: var bounds })
        {
            var (number, code, detail) = SheetNumber.Read(cell, Name, null, dialect, bounds);
            if (code is not null)
                return (code, detail!);
            record.Set(_path, number);
        }
        else if (schema is BodySchema.Boolean)
        {
            if (YesOrNo(Encoding.UTF8.GetString(cell)) is not { } flag)
                return (InputCodes.WrongType, $"{Name} is \"{Encoding.UTF8.GetString(cell)}\"; it must be true or false, or yes or no.");
            record.Set(_path, flag);
        }
        else if (schema is BodySchema.Array list)
        {
            var (json, fault) = ListCell.Read(cell, Name, list.Item is BodySchema.Text);
            if (fault is not null)
                return fault;
            record.SetJson(_path, json);
        }
        else if (schema is BodySchema.Date)
        {
            var (day, fault) = SheetDay.Read(Encoding.UTF8.GetString(cell), Name);
            if (fault is not null)
                return fault;
            record.SetJson(_path, JsonSerializer.SerializeToUtf8Bytes(day));
        }
        else
        {
            var text = Encoding.UTF8.GetString(cell);
            record.SetJson(_path, JsonSerializer.SerializeToUtf8Bytes(schema is BodySchema.Choice { Words: var words } ? WordOf(text, words) : text));
        }

        return null;
    }

    /// <summary>People write words with spaces and capitals: "Shows and stalls" is shows-and-stalls, as in a cash book.</summary>
    private static string WordOf(string text, IReadOnlyList<string> words)
    {
        var word = string.Join('-', text.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return words.Contains(word) ? word : text;
    }

    /// <summary>Spreadsheets write TRUE, people write yes.</summary>
    private static bool? YesOrNo(string text) => text.ToUpperInvariant() switch
    {
        "TRUE" or "YES" => true,
        "FALSE" or "NO" => false,
        _ => null,
    };

    private static IEnumerable<SheetColumn> Below(BodySchema.Members schema, IReadOnlyList<BodySchema.Member> before, string? without) =>
        schema.All.SelectMany(member => member.BodySchema() is BodySchema.Members inner
            ? Below(inner, [.. before, member], without)
            : [new SheetColumn([.. before, member], without)]);
}
