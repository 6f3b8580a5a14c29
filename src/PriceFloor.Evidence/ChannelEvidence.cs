using PriceFloor.Evidence.Findings;

namespace PriceFloor.Evidence;

/// <summary>A channel, what its orders say of it, and the channel with that.</summary>
public sealed record ChannelEvidence(string Channel, Channel Stored, IReadOnlyList<Finding> Findings, Channel Draft)
{
    /// <summary>Sold lines in another currency than the channel has now.</summary>
    public int LeftOut { get; init; }
}
