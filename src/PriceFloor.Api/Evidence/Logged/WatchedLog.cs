using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The log as one question sees it.</summary>
/// <param name="watch">What is known of it.</param>
/// <param name="names">Its names.</param>
/// <param name="end">Where it ends for this question.</param>
/// <param name="round">The last round of changes that it has; below 0 if it is older than what is known.</param>
internal sealed class WatchedLog(LogWatch watch, StoredNames names, LogPosition end, long round)
{
    public LogWatch Watch => watch;

    public StoredNames Names => names;

    public LogPosition End => end;

    /// <summary>What spoils what is kept of a design: with equal ones it has the same lines. Null if others have seen more of it.</summary>
    public long? StampOf(string sku) => round < 0 ? null : names.Design(sku) is not { } design ? 0
        : watch.Touched(design) is var touched && touched <= round ? touched : null;
}
