using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Demand;

/// <summary>What was asked from which day on: as listed, and as lines say that it was asked when they were sold.</summary>
internal static class OfferedPrices
{
    /// <summary>Each price differs from the one before it. Of a day the last line counts, before what was listed that day.</summary>
    public static IReadOnlyList<PriceStep> Of(IReadOnlyList<PriceStep> listed, IEnumerable<Movement> sold)
    {
        var said = sold.Where(line => line.Listed > 0).OrderBy(line => line.On).ThenBy(line => line.Position)
            .Select(line => (line.On, Rank: 1, Price: line.Listed));
        var steps = new List<PriceStep>();
        foreach (var (on, _, price) in listed.Select(step => (On: step.From, Rank: 0, step.Price)).Concat(said)
                .OrderBy(step => step.On).ThenBy(step => step.Rank))
        {
            if (steps.Count > 0 && steps[^1].From == on)
                steps.RemoveAt(steps.Count - 1);
            if (steps.Count == 0 || steps[^1].Price != price)
                steps.Add(new PriceStep(on, price));
        }

        return steps;
    }
}
