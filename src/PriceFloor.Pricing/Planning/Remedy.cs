using PriceFloor.Pricing.Numbers;
namespace PriceFloor.Pricing.Planning;

/// <summary>One way, alone, as a figure before and after; or the reason why it cannot be.</summary>
/// <param name="Kind">Which way.</param>
/// <param name="Before">The figure today.</param>
/// <param name="After">The figure that is enough, rounded to the safe side; null where the way is not possible.</param>
/// <param name="InWords">The change in the maker's words, or why it cannot be.</param>
/// <param name="Reason">A stable word where it is not possible.</param>
public sealed record Remedy(RemedyKind Kind, decimal? Before, decimal? After, string InWords, Code? Reason)
{
    public bool Possible => Reason is null;

    /// <summary>What both figures count.</summary>
    public RemedyMeasure Measure => Kind switch
    {
        RemedyKind.RaiseThePrice => RemedyMeasure.Price,
        RemedyKind.WorkFaster or RemedyKind.NewDesignMinutes => RemedyMeasure.BenchMinutesAPiece,
        RemedyKind.CheaperMaterials or RemedyKind.NewDesignMaterials => RemedyMeasure.MoneyAPiece,
        RemedyKind.LoseFewer => RemedyMeasure.GoodShare,
        RemedyKind.MoreHours => RemedyMeasure.HoursAWeek,
        _ => RemedyMeasure.MoneyAYear,
    };

    /// <summary>With spend-less: what the year's costs must fall by, rounded up; the value to feed back.</summary>
    public decimal? Cut { get; init; }

    /// <summary>"long-week" where the figure is there to be seen, not to be followed.</summary>
    public Code? Flag { get; init; }
}
