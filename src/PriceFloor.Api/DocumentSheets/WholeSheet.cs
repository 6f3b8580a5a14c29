using FluentValidation;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>Documents as a sheet, a row each, without the lists that have sheets of their own. A row of a new key makes a document.</summary>
/// <param name="name">The last part of its address.</param>
/// <param name="keyColumn">The column with the key.</param>
/// <param name="about">What its rows are, in the plural.</param>
/// <param name="fields">The columns.</param>
/// <param name="find">The stored document of a key, if the caller sees it.</param>
internal sealed class WholeSheet<T>(string name, string keyColumn, string about, IReadOnlyList<SheetColumn> fields,
    Func<Catalogue, string, T?> find) : RowSheet<T>(name, keyColumn, about) where T : class
{
    public override IReadOnlyList<SheetColumn> Fields => fields;

    public override IEnumerable<SheetLine> RowsOf(string key, T document) => [new(key, document)];

    public override T? Find(Catalogue catalogue, string key) => find(catalogue, key);

    public override ReadRow Read(string key, SheetRow row, SheetPlaces places, SheetDialect dialect, Func<string, T?> find, IValidator<T>? rules)
    {
        var document = new RecordBuilder<T>(find(key));
        var ofCells = Put(document, row, places, dialect);
        var read = rules is null || ofCells.Count > 0 ? document.Read() : document.Read(rules);
        var faults = Faults(ofCells, read.Faults, row, places);
        if (Keys.FaultIn(key) is { } against)
            faults.AddRange(AtCells([against], row, places));
        return new ReadRow(key, faults.Count > 0 ? null : read.Found, faults, row.Line);
    }
}
