using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>A time in which one price was asked.</summary>
/// <param name="Price">The price; null where none is known.</param>
/// <param name="Days">From the first day to the last.</param>
/// <param name="Sales">Orders, and weighted weeks, or events, in which it could be bought.</param>
public sealed record PriceRun(decimal? Price, DaySpan Days, Sales Sales)
{
    /// <summary>The runs of an offer, in order; none without a day on which it could be bought and without an order.</summary>
    internal static IReadOnlyList<PriceRun> Of(OfferedDesign offer, Seasons seasons)
    {
        var runs = new List<PriceRun>();
        foreach (var (price, span) in Times(offer))
        {
            var orders = offer.OrderDays.CountBelow(span.To.DayNumber + 1) - offer.OrderDays.CountBelow(span.From.DayNumber);
            var time = TimeIn(offer, span, seasons);
            if (orders > 0)
                time = decimal.Max(time, offer.Exposure == Exposure.Events ? 1 : 1m / 7);
            if (orders > 0 || time > 0)
                runs.Add(new PriceRun(price, span, new Sales(orders, time)));
        }

        return runs;
    }

    private static decimal TimeIn(OfferedDesign offer, DaySpan span, Seasons seasons) => offer.Days.Sum(days => days.And(span) is not { } both ? 0
        : offer.Exposure == Exposure.Events ? 1 : seasons.Weeks(both));

    /// <summary>What was asked first was asked before too, as far as is known.</summary>
    private static IEnumerable<(decimal? Price, DaySpan Days)> Times(OfferedDesign offer)
    {
        var steps = offer.Prices.Where(step => step.From <= offer.To).ToList();
        if (offer.First is not { } from)
            yield break;
        if (steps.Count == 0)
            steps.Add(new PriceStep(from, null));
        if (steps[0].From > from)
            steps[0] = steps[0] with { From = from };
        foreach (var (index, step) in steps.Index())
            yield return (step.Price, new DaySpan(step.From, index + 1 < steps.Count ? steps[index + 1].From.AddDays(-1) : offer.To));
    }
}
