namespace PriceFloor.Pricing.Changes;

/// <summary>
/// The draws of one number in 32 equal groups, the lowest values of the number first. How a figure's mean differs from group to group says how much
/// of it this number moves, without any further run.
/// </summary>
public sealed class DrawnGroups
{
    /// <summary>B.</summary>
    public const int Groups = 32;

    private readonly int[] _groups;

    /// <param name="groups">The group of each draw that has an answer, in order of draw.</param>
    public DrawnGroups(IEnumerable<int> groups) => _groups = [.. groups];

    /// <summary>The groups of a number's draws.</summary>
    /// <param name="hypercube">All draws.</param>
    /// <param name="number">The place of the number among its names.</param>
    /// <param name="draws">The draws that have an answer, in order.</param>
    public static DrawnGroups Of(LatinHypercube hypercube, int number, IEnumerable<int> draws) =>
        new(draws.Select(draw => hypercube.GroupOf(number, draw, Groups)));

    /// <summary>
    /// The share of a figure's variance that this number explains, adjusted for the number of groups: 1 - ((N-1)/(N-B)) x SSW/SST. Null if the figure
    /// is the same in every draw. A number that moves nothing comes out near 0, on either side. Unrounded.
    /// </summary>
    public decimal? ShareOf(DrawnFigure figure)
    {
        if (figure.Scaled is not { } scaled)
            return null;
        var groups = Sums(scaled.Values);
        var within = scaled.SumOfSquares - groups.Sum(group => group.Sum * group.Sum / group.Count);
        var count = scaled.Values.Count;
        return 1 - (count - 1m) / (count - groups.Count) * within / scaled.SumOfSquares;
    }

    /// <summary>
    /// What it is worth to know this number before taking or leaving something that gains the figure: the mean over the groups of what is gained if
    /// only the groups with a gain are taken, less what is gained without knowing. At least 0, unrounded.
    /// </summary>
    public decimal WorthOfKnowing(DrawnFigure gain)
    {
        var taken = Sums(gain.Values).Sum(group => decimal.Max(group.Sum, 0)) / gain.Values.Count;
        return decimal.Max(0, taken - decimal.Max(gain.Mean, 0));
    }

    /// <summary>The same for all numbers at once.</summary>
    public static decimal WorthOfKnowingAll(DrawnFigure gain) =>
        decimal.Max(0, gain.Values.Sum(value => decimal.Max(value, 0)) / gain.Values.Count - decimal.Max(gain.Mean, 0));

    private List<(decimal Sum, int Count)> Sums(IReadOnlyList<decimal> values)
    {
        var groups = new (decimal Sum, int Count)[Groups];
        for (var i = 0; i < values.Count; i++)
            groups[_groups[i]] = (groups[_groups[i]].Sum + values[i], groups[_groups[i]].Count + 1);
        return [.. groups.Where(group => group.Count > 0)];
    }
}
