using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence.Demand;

/// <summary>
/// When a design could be bought: while a piece was there, where the lines say what was; else while it was listed; else from the first sale to the
/// last. Days without stock do not count against it.
/// </summary>
internal static class OfferedDays
{
    public static (Exposure Exposure, IReadOnlyList<DaySpan> Days) Of(ShelfHistory shelf, string key, Channel channel,
        IReadOnlyList<PriceStep> listed, DaySpan? ordered, Func<string, IReadOnlyList<DateOnly>> events)
    {
        // A gallery that holds pieces sells those; where a channel holds none, the studio's are for sale.
        var there = !shelf.IsKnown ? null : shelf.DaysAt(key) ?? shelf.DaysAt(null);
        var isListed = listed.Any(step => step.Price is not null);
        var days = there ?? (isListed ? Listed(listed, ordered?.From, shelf.To) : ordered is { } span ? [span] : []);
        if (channel.Stall is null)
            return (there is not null ? Exposure.InStock : isListed ? Exposure.Listed : Exposure.FirstToLastSale, days);
        return (Exposure.Events, [.. events(key).Where(day => days.Any(offered => offered.And(Event(day)) is not null) && day <= shelf.To)
            .Select(day => new DaySpan(day, day))]);
    }

    /// <summary>An event goes on for a week at most.</summary>
    private static DaySpan Event(DateOnly first) => new(first, first.AddDays(StallEvents.Days));

    private static List<DaySpan> Listed(IReadOnlyList<PriceStep> listed, DateOnly? firstOrder, DateOnly to)
    {
        var spans = new List<DaySpan>();
        foreach (var (index, step) in listed.Index())
        {
            var last = index + 1 < listed.Count ? listed[index + 1].From.AddDays(-1) : to;
            if (last > to)
                last = to;
            if (step.Price is null || step.From > last)
                continue;
            if (spans.Count > 0 && spans[^1].To.AddDays(1) == step.From)
                spans[^1] = new DaySpan(spans[^1].From, last);
            else
                spans.Add(new DaySpan(step.From, last));
        }

        // What was sold before it was listed here was for sale then too.
        if (firstOrder is { } first && spans.Count > 0 && first < spans[0].From)
            spans[0] = new DaySpan(first, spans[0].To);
        return spans;
    }
}
