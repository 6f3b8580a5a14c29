namespace PriceFloor.Storage;

/// <summary>How much there is.</summary>
public partial class Snapshot
{
    /// <summary>The number of documents that are not deleted.</summary>
    public virtual ValueTask<long> Documents => Whole("SELECT count(*) FROM head WHERE deleted = 0");

    /// <summary>About how many bytes all of it takes, where many studios share a disk.</summary>
    internal virtual async ValueTask<long> Bytes() => await Session.BytesOfDocuments(long.MaxValue) + await Session.BytesOfLog();
}
