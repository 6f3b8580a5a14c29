using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;

namespace PriceFloor.Evidence;

/// <summary>The lines of one design that count.</summary>
/// <param name="Movements">Its movements, with what the last bench step made where its source counts so.</param>
/// <param name="Bench">Its bench entries, in order of position.</param>
/// <param name="Sold">Its sold lines on channels of the profile's currency.</param>
public sealed record LogOfDesign(IReadOnlyList<Movement> Movements, IReadOnlyList<BenchEntry> Bench, IReadOnlyList<SoldLine> Sold)
{
    /// <summary>Other sold lines: their money is another than the profile's, which nothing converts, or their channel is gone.</summary>
    public int LeftOut { get; init; }

    /// <summary>Whether movements of its own say what was made.</summary>
    public bool HasMade { get; init; }

    /// <summary>Pieces that did not come out good.</summary>
    public long Rejected => Bench.Sum(entry => entry is { Started: { } started, Good: { } good } ? (long)(started - good) : 0);
}
