namespace PriceFloor.Storage;

/// <summary>One immutable revision of a document.</summary>
/// <param name="Position">Its place in the order of all writes.</param>
/// <param name="Kind">What kind of document.</param>
/// <param name="Key">The document's key.</param>
/// <param name="Number">1, 2, 3 ... for each document.</param>
/// <param name="SavedAt">When, in microseconds since 1970 UTC.</param>
/// <param name="SavedBy">Name of the key that wrote it.</param>
/// <param name="Body">JSON text; null if the document was deleted.</param>
public sealed record Revision(long Position, string Kind, string Key, long Number, long SavedAt, string SavedBy, string? Body)
{
    public bool IsDeletion => Body is null;

    public DateTimeOffset SavedAtTime => Moment.ToTime(SavedAt);
}

/// <summary>Names a document: its kind and its key.</summary>
public sealed record DocumentName(string Kind, string Key);

/// <summary>A document at two positions of the store.</summary>
/// <param name="Document">The document.</param>
/// <param name="Before">Its newest revision at the first, deletions included; null if it did not exist.</param>
/// <param name="After">Its newest revision at the second.</param>
public sealed record Change(DocumentName Document, Revision? Before, Revision? After);

/// <summary>Times in the store: whole microseconds since 1970 UTC.</summary>
public static class Moment
{
    public static long Of(DateTimeOffset time) => (time.UtcTicks - DateTimeOffset.UnixEpoch.Ticks) / TimeSpan.TicksPerMicrosecond;

    public static DateTimeOffset ToTime(long moment) => DateTimeOffset.UnixEpoch.AddTicks(moment * TimeSpan.TicksPerMicrosecond);
}
