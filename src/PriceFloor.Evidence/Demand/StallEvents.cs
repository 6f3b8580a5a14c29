using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Demand;

/// <summary>The events of a stall: of one fair, days no more than a week apart.</summary>
public static class StallEvents
{
    internal const int Days = 7;

    /// <summary>The first day of each event, in order.</summary>
    /// <param name="sold">All sold lines of the channel.</param>
    public static IReadOnlyList<DateOnly> Of(IEnumerable<Movement> sold)
    {
        var firsts = new List<DateOnly>();
        foreach (var fair in sold.GroupBy(line => line.Stall ?? "", line => line.On))
        {
            DateOnly? last = null;
            foreach (var day in fair.Order())
            {
                if (!(last?.AddDays(Days) >= day))
                    firsts.Add(day);
                last = day;
            }
        }

        firsts.Sort();
        return firsts;
    }
}
