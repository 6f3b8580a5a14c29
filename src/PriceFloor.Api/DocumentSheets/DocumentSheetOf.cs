using System.Diagnostics;
using System.IO.Pipelines;
using System.Text;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>A sheet about one kind of document.</summary>
internal abstract class DocumentSheetOf<T>(string name, string keyColumn, string about) : DocumentSheet(name, keyColumn, about) where T : class
{
    private const int LongestRow = 512 * 1024;

    /// <summary>Whether a row is a whole document, which it may make.</summary>
    public abstract bool IsWhole { get; }

    public override async ValueTask<IReadOnlyList<SheetLine>> Lines(Snapshot snapshot, ProfileAccess access, DateTimeOffset? asOf,
        IServiceProvider services)
    {
        var kind = services.GetRequiredService<DocumentKind<T>>();
        var stored = await access.List(snapshot, kind.Name, "", "", int.MaxValue, asOf is { } time ? Moment.Of(time) : null);
        return [.. stored.Select(kind.Sound).SelectMany(revision => RowsOf(revision.Key, Stored<T>.Of(revision).Document))];
    }

    public override Task<IResult> StoreAsync(BatchBody sent, SheetDialect dialect, CatalogueReader reader, Func<Writing, ValueTask<Fault?>> guard,
        HttpContext context)
    {
        var (store, kind) = (context.RequestServices.GetRequiredService<Store>(), context.RequestServices.GetRequiredService<DocumentKind<T>>());
        return AllOrNothing.WriteAsync(store, reader, Caller.Of(context), kind,
            catalogue => sent.Lines<T>((_, _, _, _) => throw new UnreachableException(),
                pipe => ReadAsync(pipe, dialect, catalogue, kind, context.RequestAborted), context.RequestAborted),
            guard, SheetWriteAnswer.Of);
    }

    /// <summary>What a document's rows are.</summary>
    public abstract IEnumerable<SheetLine> RowsOf(string key, T document);

    /// <summary>The stored document that a row is about, if the caller sees it.</summary>
    public abstract T? Find(Catalogue catalogue, string key);

    /// <summary>Reads one row over the document as it is, without looking at other rows.</summary>
    /// <param name="key">The cell of the key.</param>
    /// <param name="row">The row.</param>
    /// <param name="places">Where the sheet has which column.</param>
    /// <param name="dialect">How numbers are written.</param>
    /// <param name="find">The document of a key as it is.</param>
    /// <param name="rules">The rules between fields; null if they are checked later.</param>
    public abstract ReadRow Read(string key, SheetRow row, SheetPlaces places, SheetDialect dialect, Func<string, T?> find, IValidator<T>? rules);

    /// <summary>The document with what the rows say; null if there is none and rows do not make one.</summary>
    public abstract T? With(T? document, IReadOnlyList<ReadRow> rows);

    /// <summary>A fault of the whole document at the row and column of this sheet that it is about; null if it is about none of them.</summary>
    public abstract InputError? Placed(InputError fault, IReadOnlyList<ReadRow> rows);

    /// <summary>That a row is about a document that does not exist.</summary>
    public abstract InputError Unknown(ReadRow row, DocumentKind<T> kind);

    /// <summary>The documents that the rows make, laid over the stored ones, each with every fault at its row.</summary>
    protected abstract Outcome<List<PlacedLine<T>>> Laid(IReadOnlyList<ReadRow> rows, Catalogue catalogue, DocumentKind<T> kind);

    /// <summary>The faults of a row, at the cells of its fields.</summary>
    protected IEnumerable<InputError> AtCells(IEnumerable<InputError> faults, SheetRow row, SheetPlaces places) => faults.Select(fault =>
    {
        var field = FieldAt(fault.Pointer);
        var (line, column) = places.Of(field?.Name ?? KeyColumn) is { } at ? row.PlaceOf(at) : (row.Line, 1);
        return fault with { Pointer = null, Parameter = field?.Name ?? fault.Pointer?.Split('/')[^1], Line = line, Column = column };
    });

    /// <summary>The column that a pointer leads to, or into.</summary>
    protected SheetColumn? FieldAt(string? pointer) =>
        Fields.FirstOrDefault(field => pointer is not null
            && (pointer == field.Pointer || pointer.StartsWith(field.Pointer + "/", StringComparison.Ordinal)));

    /// <summary>Sets every field that the sheet has; the cells that are no values of their columns.</summary>
    protected List<InputError> Put<TRecord>(RecordBuilder<TRecord> record, SheetRow row, SheetPlaces places, SheetDialect dialect)
        where TRecord : class
    {
        var faults = new List<InputError>();
        foreach (var field in Fields)
            if (places.Of(field.Name) is { } at && field.Put(record, row, at, dialect) is var (code, detail))
                faults.Add(new InputError { Pointer = field.Pointer, Code = code, Detail = detail });
        return faults;
    }

    /// <summary>All faults of a row: those of cells, and those of the record apart from the same cells.</summary>
    protected List<InputError> Faults(List<InputError> ofCells, IEnumerable<Fault> ofRecord, SheetRow row, SheetPlaces places) =>
        [.. AtCells(ofCells.Concat(ofRecord.Cast<RequestFault>().Select(fault => fault.Error!)
            .Where(fault => !ofCells.Exists(cell => cell.Pointer == fault.Pointer))), row, places)];

    private async Task<Outcome<List<PlacedLine<T>>>> ReadAsync(PipeReader pipe, SheetDialect dialect, Catalogue catalogue, DocumentKind<T> kind,
        CancellationToken cancel)
    {
        using var sheet = new SheetReader(pipe, dialect, LongestRow);
        var (header, unreadable) = await sheet.ReadHeaderAsync(cancel);
        if (unreadable is not null)
            return RequestFault.Unreadable(unreadable);
        var columns = SheetPlaces.Of(header!, KeyColumn, Fields.Select(field => field.Name), About, dialect);
        if (columns.Found is not { } places)
            return columns.Faults.ToList();
        var rows = new List<ReadRow>();
        while (await sheet.WaitAsync(cancel))
            while (sheet.TryNext(out var row))
                if (!row.IsBlank)
                    rows.Add(row.Fault is { } fault ? new ReadRow("", null, [fault], row.Line) { IsUnreadable = true }
                        : places.Unheaded(row) is { } stray ? new ReadRow("", null, [stray], row.Line)
                        : Read(Encoding.UTF8.GetString(row.Cell(places.Key)), row, places, dialect, key => Find(catalogue, key), kind.Validator));
        return Laid(rows, catalogue, kind);
    }
}

/// <summary>A row that was read.</summary>
/// <param name="Key">The key of its document.</param>
/// <param name="Value">What it says; null with faults.</param>
/// <param name="Faults">Everything that is wrong with it, at its cells.</param>
/// <param name="Line">Its line in the sheet, from 1.</param>
internal sealed record ReadRow(string Key, object? Value, IReadOnlyList<InputError> Faults, long Line)
{
    /// <summary>Its bytes are not a row.</summary>
    public bool IsUnreadable { get; init; }

    /// <summary>Of a workbook: where the sheet has which column. In a sheet of text, a fault of the whole document has only its line.</summary>
    public SheetPlaces? Cells { get; init; }

    public long ColumnOf(string? name) => name is not null && Cells?.Of(name) is { } at ? at + 1 : 1;
}
