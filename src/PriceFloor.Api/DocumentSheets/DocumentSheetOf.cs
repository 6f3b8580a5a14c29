using System.Diagnostics;
using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>A sheet about one kind of document.</summary>
internal abstract class DocumentSheetOf<T>(string name, string keyColumn, string about) : DocumentSheet(name, keyColumn, about) where T : class
{
    private const int LongestRow = 512 * 1024;

    public override async ValueTask<byte[]> Written(Snapshot snapshot, ProfileAccess access, DateTimeOffset? asOf, SheetDialect dialect,
        IServiceProvider services)
    {
        var kind = services.GetRequiredService<DocumentKind<T>>();
        var stored = await access.List(snapshot, kind.Name, "", "", int.MaxValue, asOf is { } time ? Moment.Of(time) : null);
        var rows = stored.Select(kind.Sound)
            .SelectMany(revision => RowsOf(Stored<T>.Of(revision).Document), (revision, row) => (revision.Key, Row: row));
        return await SheetBytes.Of(dialect, [.. Columns], rows, (sheet, row) =>
        {
            sheet.Text(row.Key);
            foreach (var field in Fields)
                field.Write(sheet, row.Row);
        }, CancellationToken.None);
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
    protected abstract IEnumerable<object> RowsOf(T document);

    /// <summary>The documents that the rows make, laid over the stored ones, each with every fault at its row.</summary>
    protected abstract Outcome<List<PlacedLine<T>>> Laid(IReadOnlyList<ReadRow> rows, Catalogue catalogue, DocumentKind<T> kind);

    /// <summary>Reads one row, over what is stored, without looking at other rows.</summary>
    protected abstract ReadRow Read(string key, SheetRow row, SheetPlaces places, SheetDialect dialect, Catalogue catalogue, DocumentKind<T> kind);

    /// <summary>The faults of a row, at the cells of its fields.</summary>
    protected IEnumerable<InputError> AtCells(IEnumerable<InputError> faults, SheetRow row, SheetPlaces places) => faults.Select(fault =>
    {
        var field = Fields.FirstOrDefault(field => fault.Pointer is { } pointer && pointer.StartsWith(field.Pointer, StringComparison.Ordinal));
        var (line, column) = places.Of(field?.Name ?? KeyColumn) is { } at ? row.PlaceOf(at) : (row.Line, 1);
        return fault with { Pointer = null, Parameter = field?.Name ?? fault.Pointer?.Split('/')[^1], Line = line, Column = column };
    });

    /// <summary>A row with a cell that is no value of its column.</summary>
    protected ReadRow Faulty(string key, SheetColumn field, Code code, string detail, SheetRow row, SheetPlaces places) =>
        new(key, null, [.. AtCells([new InputError { Pointer = field.Pointer, Code = code, Detail = detail }], row, places)], row.Line);

    private async Task<Outcome<List<PlacedLine<T>>>> ReadAsync(PipeReader pipe, SheetDialect dialect, Catalogue catalogue, DocumentKind<T> kind,
        CancellationToken cancel)
    {
        using var sheet = new SheetReader(pipe, dialect, LongestRow);
        var (header, unreadable) = await sheet.ReadHeaderAsync(cancel);
        if (unreadable is not null)
            return RequestFault.Unreadable(unreadable);
        var columns = SheetPlaces.Of(header!, KeyColumn, Fields.Select(field => field.Name), About);
        if (columns.Found is not { } places)
            return columns.Faults.ToList();
        var rows = new List<ReadRow>();
        while (await sheet.WaitAsync(cancel))
            while (sheet.TryNext(out var row))
                if (!row.IsBlank)
                    rows.Add(row.Fault is { } fault ? new ReadRow("", null, [fault], row.Line) { IsUnreadable = true }
                        : Read(Encoding.UTF8.GetString(row.Cell(places.Key)), row, places, dialect, catalogue, kind));
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
}
