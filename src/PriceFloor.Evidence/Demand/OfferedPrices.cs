using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Demand;

/// <summary>What was asked from which day on: as listed, and as lines say that it was asked when they were sold.</summary>
internal static class OfferedPrices
{
    /// <summary>Each price differs from the one before it. Of a day the last line counts, before what was listed that day.</summary>
    public static IReadOnlyList<PriceStep> Of(IReadOnlyList<PriceStep> listed, IEnumerable<Movement> sold)
    {
        var said = InOrder.Of(sold.Where(line => line.Listed > 0), (one, other) => one.On != other.On ? one.On.CompareTo(other.On)
            : one.Position.CompareTo(other.Position)).Select(line => (line.On, Rank: 1, Price: line.Listed));
        var all = listed.Count == 0 ? said : listed.Select(step => (On: step.From, Rank: 0, step.Price)).Concat(said)
            .OrderBy(step => step.On).ThenBy(step => step.Rank);
        var steps = new List<PriceStep>();
        foreach (var (on, _, price) in all)
        {
            if (steps.Count > 0 && steps[^1].From == on)
                steps.RemoveAt(steps.Count - 1);
            if (steps.Count == 0 || steps[^1].Price != price)
                steps.Add(new PriceStep(on, price));
        }

        return steps;
    }
}
