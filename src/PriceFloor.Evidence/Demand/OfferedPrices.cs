using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Demand;

/// <summary>What was asked from which day on: as listed, and as lines say that it was asked when they were sold.</summary>
internal static class OfferedPrices
{
    /// <summary>Each price differs from the one before it. Of a day the last line counts, before what was listed that day.</summary>
    /// <param name="listed">What was listed, in order of day.</param>
    /// <param name="sold">What was sold, in order of day.</param>
    public static IReadOnlyList<PriceStep> Of(IReadOnlyList<PriceStep> listed, IReadOnlyList<Movement> sold)
    {
        var (steps, next) = (new List<PriceStep>(), 0);
        foreach (var line in sold)
            if (line.Listed > 0)
            {
                while (next < listed.Count && listed[next].From <= line.On)
                    Add(steps, listed[next].From, listed[next++].Price);
                Add(steps, line.On, line.Listed);
            }

        while (next < listed.Count)
            Add(steps, listed[next].From, listed[next++].Price);
        return steps;
    }

    private static void Add(List<PriceStep> steps, DateOnly from, decimal? price)
    {
        if (steps.Count > 0 && steps[^1].From == from)
            steps.RemoveAt(steps.Count - 1);
        if (steps.Count == 0 || steps[^1].Price != price)
            steps.Add(new PriceStep(from, price));
    }
}
