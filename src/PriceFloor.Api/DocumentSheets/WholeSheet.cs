using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>Documents as a sheet, a row each, without a list that has a sheet of its own. A row of a new key makes a document.</summary>
internal sealed class WholeSheet<T>(string name, string keyColumn, string about, string leftOut, Func<Catalogue, string, T?> find)
    : DocumentSheetOf<T>(name, keyColumn, about) where T : class
{
    private readonly IReadOnlyList<SheetColumn> _fields = SheetColumn.Of(typeof(T), leftOut);

    protected override IReadOnlyList<SheetColumn> Fields => _fields;

    protected override IEnumerable<object> RowsOf(T document) => [document];

    protected override ReadRow Read(string key, SheetRow row, SheetPlaces places, SheetDialect dialect, Catalogue catalogue, DocumentKind<T> kind)
    {
        var document = new RecordBuilder<T>(find(catalogue, key));
        foreach (var field in _fields)
            if (places.Of(field.Name) is { } at && field.Put(document, row, at, dialect) is var (code, detail))
                return Faulty(key, field, code, detail, row, places);
        var read = document.Read(kind.Validator);
        List<InputError> faults = [.. read.Faults.Cast<RequestFault>().Select(fault => fault.Error!)];
        if (Keys.FaultIn(key) is { } against)
            faults.Add(against);
        return new ReadRow(key, read.Found, [.. AtCells(faults, row, places)], row.Line);
    }

    protected override Outcome<List<PlacedLine<T>>> Laid(IReadOnlyList<ReadRow> rows, Catalogue catalogue, DocumentKind<T> kind) =>
        rows.Select(row => new PlacedLine<T>(row.Faults.Count > 0 ? null : row.Key, (T?)row.Value, row.Faults, null, row.Line, 1)
        {
            IsUnreadable = row.IsUnreadable,
        }).ToList();
}
