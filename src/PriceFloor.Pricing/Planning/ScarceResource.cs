using PriceFloor.Pricing.Planning.Solver;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>Something beside bench hours of which the year has only so much.</summary>
public sealed class ScarceResource
{
    private readonly Func<PriceCheck, int, decimal> _takenBy;

    private ScarceResource(LimitKind kind, Resource resource, int? line, Func<PriceCheck, int, decimal> takenBy) =>
        (Kind, Resource, Line, _takenBy) = (kind, resource, line, takenBy);

    public LimitKind Kind { get; }

    /// <summary>For a stall: the first line that is sold there.</summary>
    public int? Line { get; }

    /// <summary>Its name and how much of it there is.</summary>
    public Resource Resource { get; }

    /// <summary>
    /// The profile's loads; the selling hours, if the calendar has some; the pieces that each channel's stalls of the year sell.
    /// </summary>
    /// <param name="year">The year.</param>
    /// <param name="lines">What may be sold.</param>
    internal static IEnumerable<ScarceResource> Of(StudioYear year, IReadOnlyList<PriceCheck> lines)
    {
        foreach (var limit in year.Profile.Limits)
            yield return new(LimitKind.Loads, new Resource(limit.Name, limit.LoadsPerYear), null,
                (check, _) => check.Prices.Floor.UnitCost.LoadsOf(limit.Name));
        if (year.SellingHours > 0)
            yield return new(LimitKind.SellingHours, new Resource("selling", year.SellingHours, "hours of selling"), null,
                (check, _) => check.Prices.ChannelFloor.SellingHours);
        foreach (var sold in StallLines.Of(lines.Select(line => line.Prices.Terms.Channel)).Where(sold => sold.Stall.TimesAYear is not null))
            yield return new(LimitKind.StallPieces,
                new Resource("stall", sold.Stall.TimesAYear!.Value * sold.Stall.Pieces, "pieces at the year's stalls"),
                sold.Lines[0], (_, line) => sold.Lines.Contains(line) ? 1 : 0);
    }

    internal decimal TakenBy(PriceCheck check, int line) => _takenBy(check, line);
}
