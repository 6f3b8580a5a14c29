using PriceFloor.Evidence.Findings;

namespace PriceFloor.Evidence;

/// <summary>What a log's lines rest on.</summary>
/// <param name="Designs">The designs that the lines name.</param>
/// <param name="Channel">A channel by its key.</param>
/// <param name="Listed">The price listed for a design on a channel on a day, where a line does not say it.</param>
/// <param name="Good">What is known of good shares before a design's own lots, where the lines are only some; null: what the lines say.</param>
public sealed record KnownStudio(IReadOnlyList<KnownDesign> Designs, Func<string, Channel?> Channel, Func<string, string, DateOnly, decimal?> Listed,
    GoodPriors? Good = null);
