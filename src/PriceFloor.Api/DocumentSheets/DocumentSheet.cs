using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>Stored documents, or a list in them, as a sheet that can come back: what comes back unedited changes nothing.</summary>
/// <param name="name">The last part of its address.</param>
/// <param name="keyColumn">The column with the key of the document that a row belongs to.</param>
/// <param name="about">What its rows are, in the plural.</param>
internal abstract class DocumentSheet(string name, string keyColumn, string about)
{
    public string Name { get; } = name;

    public string KeyColumn { get; } = keyColumn;

    public string About { get; } = about;

    /// <summary>The names of its columns, the key's first.</summary>
    public IReadOnlyList<string> Columns => [KeyColumn, .. Fields.Select(one => one.Name)];

    public abstract IReadOnlyList<SheetColumn> Fields { get; }

    /// <summary>Every row of what the key sees, in order of document.</summary>
    public abstract ValueTask<IReadOnlyList<SheetLine>> Lines(Snapshot snapshot, ProfileAccess access, DateTimeOffset? asOf,
        IServiceProvider services);

    /// <summary>Writes the cells of a row.</summary>
    public void Write(ISheetCells cells, SheetLine line)
    {
        cells.Text(line.Key);
        foreach (var field in Fields)
            field.Write(cells, line.Row);
    }

    /// <summary>The sheet of everything that the key sees.</summary>
    public async ValueTask<byte[]> Written(Snapshot snapshot, ProfileAccess access, DateTimeOffset? asOf, SheetDialect dialect,
        IServiceProvider services) =>
            await SheetBytes.Of(dialect, [.. Columns], await Lines(snapshot, access, asOf, services), Write, CancellationToken.None);

    /// <summary>Stores what the rows say, all or nothing.</summary>
    /// <param name="sent">The sheet.</param>
    /// <param name="dialect">How it is written.</param>
    /// <param name="reader">What the caller sees.</param>
    /// <param name="guard">Why it must not be stored, asked within the write.</param>
    /// <param name="context">The request.</param>
    public abstract Task<IResult> StoreAsync(BatchBody sent, SheetDialect dialect, CatalogueReader reader, Func<Writing, ValueTask<Fault?>> guard,
        HttpContext context);
}

/// <summary>A row to write.</summary>
/// <param name="Key">The cell of the key.</param>
/// <param name="Row">The record with the other cells.</param>
internal sealed record SheetLine(string Key, object Row);
