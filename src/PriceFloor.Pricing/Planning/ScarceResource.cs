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

    /// <summary>For hours through a month: the month, 1 to 11.</summary>
    public int? Month { get; private init; }

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

    /// <summary>
    /// The hours from the first month through each other but the last: what is sold by then takes no more of them than there are. Work may be made
    /// ahead from the first month on, so these and the hours of the year are all that a mix must keep to.
    /// </summary>
    /// <param name="hours">Bench hours of the year for the lines.</param>
    /// <param name="work">How they are spread over its months.</param>
    /// <param name="lines">What may be sold.</param>
    internal static IEnumerable<ScarceResource> OfMonths(decimal hours, Season work, IReadOnlyList<OfferedLine> lines)
    {
        for (var month = 1; month < 12; month++)
        {
            var through = month;
            var shares = lines.Select(line => (line.Season ?? Season.Even).ShareThrough(through)).ToList();
            yield return new(LimitKind.HoursThroughMonth,
                new Resource(FormattableString.Invariant($"hours-through-month-{month}"), hours * work.ShareThrough(month),
                    FormattableString.Invariant($"bench hours through month {month}")),
                null, (check, line) => check.Prices.Floor.UnitCost.BenchHours * shares[line])
            { Month = month };
        }
    }

    internal decimal TakenBy(PriceCheck check, int line) => _takenBy(check, line);
}
