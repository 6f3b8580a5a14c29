namespace PriceFloor.Pricing.Documents;

/// <summary>
/// How the work gets quicker: with every doubling of the pieces made, one takes <c>rate</c> times as long as before. It shortens only steps done
/// piece by piece that may be hurried.
/// </summary>
public sealed record Learning
{
    /// <summary>
    /// Of the time of one piece, what is left of it at twice as many: 0.5 to 1. 0.85: the second takes 85 % of the first. If absent, the design is a
    /// stored one, and the rate is what its bench log shows (learning in its evidence), or 1 if it shows none; assumed says which.
    /// </summary>
    /// <example>0.85</example>
    [Share(Minimum = "0.5")]
    public decimal? Rate { get; init; }

    /// <summary>
    /// Pieces made before, whole. 0: the design's minutes are those of the first piece; else those of the last one made. If absent: 0, or with a rate
    /// from the log the pieces that it is of.
    /// </summary>
    /// <example>12</example>
    [Pieces]
    public decimal? MadeBefore { get => field ?? (Rate is null ? null : 0); init; }
}
