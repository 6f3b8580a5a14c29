namespace PriceFloor.Storage;

/// <summary>How much there is.</summary>
public partial class Snapshot
{
    /// <summary>The number of documents that are not deleted.</summary>
    public ValueTask<long> Documents => Whole("SELECT count(*) FROM head WHERE deleted = 0");
}
