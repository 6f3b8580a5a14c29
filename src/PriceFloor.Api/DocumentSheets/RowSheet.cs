using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>A sheet with a row for each document.</summary>
internal abstract class RowSheet<T>(string name, string keyColumn, string about) : DocumentSheetOf<T>(name, keyColumn, about) where T : class
{
    public override bool IsWhole => true;

    public override T? With(T? document, IReadOnlyList<ReadRow> rows) => (T?)rows[0].Value;

    public override InputError? Placed(InputError fault, IReadOnlyList<ReadRow> rows) => FieldAt(fault.Pointer) is { } field
        ? fault with { Pointer = null, Parameter = field.Name, Line = rows[0].Line, Column = rows[0].ColumnOf(field.Name) }
        : null;

    public override InputError Unknown(ReadRow row, DocumentKind<T> kind) => throw new InvalidOperationException("A row makes a document.");

    protected override Outcome<List<PlacedLine<T>>> Laid(IReadOnlyList<ReadRow> rows, Catalogue catalogue, DocumentKind<T> kind) =>
        rows.Select(row => new PlacedLine<T>(row.Faults.Count > 0 ? null : row.Key, (T?)row.Value, row.Faults, null, row.Line, 1)
        {
            IsUnreadable = row.IsUnreadable,
        }).ToList();
}
