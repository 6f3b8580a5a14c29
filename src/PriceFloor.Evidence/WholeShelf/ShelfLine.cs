using PriceFloor.Evidence.Decisions;

namespace PriceFloor.Evidence.WholeShelf;

/// <summary>One design beside the others. Unrounded.</summary>
/// <param name="Design">What its lines said.</param>
/// <param name="Decision">What they suggest.</param>
/// <param name="Contribution">What it brought beyond its materials; 0 where nothing was sold.</param>
/// <param name="ShareOfContribution">Its share of what all designs contribute; null where they contribute nothing.</param>
/// <param name="ShareOfHours">Its share of the bench hours of what was sold; null where nothing was.</param>
/// <param name="Instead">Where it is to be dropped: the design to which its hours could go; null where there is none.</param>
public sealed record ShelfLine(DesignEvidence Design, DesignDecision Decision, decimal Contribution, decimal? ShareOfContribution,
    decimal? ShareOfHours, string? Instead)
{
    public string Sku => Design.Known.Sku;

    /// <summary>Its share of the contribution over its share of the hours: above 1 it carries others.</summary>
    public decimal? Pull => ShareOfHours > 0 ? ShareOfContribution / ShareOfHours : null;

    /// <summary>How many days old the oldest piece on hand is; null where there is none, or nobody knows.</summary>
    public int? Oldest => Design.Shelf is { IsKnown: true, OnHand: > 0 } shelf
        && shelf.OldestMade is { } made ? shelf.To.DayNumber - made.DayNumber : null;
}
