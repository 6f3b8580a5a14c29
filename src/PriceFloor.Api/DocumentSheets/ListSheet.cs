using System.Globalization;
using System.Text;
using FluentValidation;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>
/// A list in documents as a sheet, a row for each of its lines. A sheet that comes back replaces the list of each document that it names; other
/// documents stay. A column that it does not have stays as it is in the stored line of the same name.
/// </summary>
internal sealed class ListSheet<T, TLine>(string name, string keyColumn, string about, ListPlace<T, TLine> place)
    : DocumentSheetOf<T>(name, keyColumn, about) where T : class where TLine : class
{
    private readonly IReadOnlyList<SheetColumn> _fields = SheetColumn.Of(typeof(TLine));

    public override bool IsWhole => false;

    public override IReadOnlyList<SheetColumn> Fields => _fields;

    public override IEnumerable<SheetLine> RowsOf(string key, T document) => place.Lines(document).Select(line => new SheetLine(key, line));

    public override T? Find(Catalogue catalogue, string key) => place.Find(catalogue, key);

    public override ReadRow Read(string key, SheetRow row, SheetPlaces places, SheetDialect dialect, Func<string, T?> find, IValidator<T>? rules)
    {
        var line = new RecordBuilder<TLine>(Stored(key, row, places, find));
        var ofCells = Put(line, row, places, dialect);
        var read = line.Read();
        var faults = Faults(ofCells, read.Faults, row, places);
        if (place.New is not null && Keys.FaultIn(key) is { } against)
            faults.AddRange(AtCells([against], row, places));
        return new ReadRow(key, faults.Count > 0 ? null : read.Found, faults, row.Line);
    }

    public override T? With(T? document, IReadOnlyList<ReadRow> rows) =>
        (document ?? place.New?.Invoke()) is { } stored ? place.With(stored, [.. rows.Select(line => (TLine)line.Value!)]) : null;

    public override InputError? Placed(InputError fault, IReadOnlyList<ReadRow> rows) =>
        rows.Count > 0 && (fault.Pointer == place.Pointer || fault.Pointer?.StartsWith(place.Pointer + "/", StringComparison.Ordinal) == true)
            ? AtRow(fault, rows)
            : null;

    public override InputError Unknown(ReadRow row, DocumentKind<T> kind) => new()
    {
        Parameter = KeyColumn,
        Code = place.Unknown,
        Detail = row.Key.Length == 0 ? $"{KeyColumn} is empty; every row says which {kind.Name} it belongs to."
            : $"There is no {kind.Name} \"{row.Key}\"; case counts.",
        Line = row.Line,
        Column = row.ColumnOf(KeyColumn),
    };

    protected override Outcome<List<PlacedLine<T>>> Laid(IReadOnlyList<ReadRow> rows, Catalogue catalogue, DocumentKind<T> kind)
    {
        var documents = new List<PlacedLine<T>>();
        var unknown = new List<Fault>();
        foreach (var group in rows.GroupBy(row => row.Key))
        {
            List<ReadRow> lines = [.. group];
            var faults = lines.SelectMany(line => line.Faults).ToList();
            var placed = new PlacedLine<T>(group.Key, null, faults, null, lines[0].Line, 1)
            {
                IsUnreadable = lines.Exists(line => line.IsUnreadable),
            };
            if (faults.Count > 0)
                documents.Add(placed);
            else if ((place.Find(catalogue, group.Key) ?? place.New?.Invoke()) is not { } stored)
                unknown.Add(RequestFault.Unknown(Unknown(lines[0], kind)));
            else
                documents.Add(With(placed, stored, lines, kind));
        }

        return unknown.Count > 0 && documents.TrueForAll(document => document.Faults.Count == 0) ? unknown : documents;
    }

    /// <summary>The document with the new list, or the rules that it breaks, each at its row.</summary>
    private PlacedLine<T> With(PlacedLine<T> placed, T stored, List<ReadRow> lines, DocumentKind<T> kind)
    {
        var document = place.With(stored, [.. lines.Select(line => (TLine)line.Value!)]);
        List<InputError> faults = [.. RecordReader.Check(document)];
        faults.AddRange([.. Rules.Faults(kind.Validator, document, faults)]);
        return faults.Count == 0 ? placed with { Document = document } : placed with { Faults = [.. faults.Select(fault => AtRow(fault, lines))] };
    }

    private InputError AtRow(InputError fault, IReadOnlyList<ReadRow> lines)
    {
        var isBelow = fault.Pointer?.StartsWith(place.Pointer + "/", StringComparison.Ordinal) ?? false;
        var parts = isBelow ? fault.Pointer![(place.Pointer.Length + 1)..].Split('/') : [""];
        var hasLine = int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < lines.Count;
        var line = lines[hasLine ? index : 0];
        var field = _fields.FirstOrDefault(field => field.Pointer == "#/" + string.Join('/', parts[1..]));
        return fault with
        {
            Pointer = null,
            Parameter = field?.Name ?? fault.Pointer?.Split('/')[^1],
            Line = line.Line,
            Column = line.ColumnOf(field?.Name),
        };
    }

    private TLine? Stored(string key, SheetRow row, SheetPlaces places, Func<string, T?> find)
    {
        if (_fields.All(field => places.Of(field.Name) is not null) || find(key) is not { } document)
            return null;
        var called = string.Join('\n', place.NameColumns.Select(column => places.Of(column) is { } at ? Encoding.UTF8.GetString(row.Text(at)) : ""));
        var same = place.Lines(document).Where(line => place.NameOf(line) == called).Take(2).ToList();
        return same.Count == 1 ? same[0] : null;
    }
}

/// <summary>Where a list is in its document.</summary>
/// <param name="Pointer">Its JSON Pointer, such as <c>#/expenses</c>.</param>
/// <param name="Lines">The list.</param>
/// <param name="With">The document with another list.</param>
/// <param name="Find">The stored document of a key, if the caller sees it.</param>
/// <param name="Unknown">The code if there is none.</param>
/// <param name="NameColumns">The columns by which people know a line.</param>
/// <param name="NameOf">Their values in a line, with line breaks between them.</param>
internal sealed record ListPlace<T, TLine>(string Pointer, Func<T, IReadOnlyList<TLine>> Lines, Func<T, IReadOnlyList<TLine>, T> With,
    Func<Catalogue, string, T?> Find, Code Unknown, IReadOnlyList<string> NameColumns, Func<TLine, string?> NameOf)
{
    /// <summary>The document that a row of a new key makes; null if it cannot make one.</summary>
    public Func<T>? New { get; init; }
}
