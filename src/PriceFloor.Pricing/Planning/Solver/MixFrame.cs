using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A mix problem as whole-number programmes. The minimum units are taken for granted; choices that leave nothing for the pool keep to
/// theirs, since more of them takes hours for nothing; rows that cannot be broken are left out. Choices that are alike in all but their
/// range may be counted together: two lines of at most 5 and 7 are one of at most 12, and the earlier line is filled first;
/// those that leave most an hour then come first.
/// </summary>
internal sealed class MixFrame
{
    private readonly MixProblem _problem;
    private readonly List<List<int>> _groups;
    private readonly Taking _contributions;
    private readonly Taking _hours;
    private readonly Taking[] _loads;
    private readonly decimal?[] _market;

    public MixFrame(MixProblem problem, bool grouped)
    {
        _problem = problem;
        _groups = GroupsOf(problem.Choices, grouped);
        _contributions = Each(choice => -choice.Contribution);
        _hours = Each(choice => choice.Hours);
        _loads = [.. problem.Limits.Select((_, k) => Each(choice => choice.Loads[k]))];
        _market = [.. _groups.Select(MarketOf)];
    }

    /// <summary>The most, or the fewest hours, within these hours and loads; a null least contribution asks for none.</summary>
    public MixProgramme Programme(MixGoal goal, decimal hours, IReadOnlyList<decimal> loads, decimal? leastContribution)
    {
        List<MixRow> rows = [_hours.Row(hours), .. _loads.Select((load, k) => load.Row(loads[k]))];
        if (leastContribution is { } least)
            rows.Add(_contributions.Row(-least));
        var most = Most(rows);
        var (gains, seconds) = goal == MixGoal.MaximumSurplus ? (_contributions, _hours) : (_hours, _contributions);
        return new MixProgramme(
            Array.ConvertAll(gains.Each, figure => -figure),
            Array.ConvertAll(seconds.Each, figure => -figure),
            [.. rows.Where(row => CanBreak(row, most))],
            new decimal[most.Length],
            most);
    }

    /// <summary>Whether a limit can ever stand in the way, so that one load more could be worth something.</summary>
    public bool Matters(int limit) => CanBreak(_loads[limit].Row(_problem.Limits[limit].Loads), Most([_hours.Row(_problem.Hours)]));

    /// <summary>What the minimum units leave for the pool.</summary>
    public decimal LeastContribution => -_contributions.Least;

    /// <summary>How much work it is to write a programme down, beside that of solving it.</summary>
    public long Effort => _groups.Count * (2L + _loads.Length);

    public int Columns => _groups.Count;

    /// <summary>Units of every choice of the problem, its minimum included.</summary>
    public decimal[] Spread(decimal[] units)
    {
        var all = _problem.Choices.Select(choice => choice.Minimum).ToArray();
        foreach (var (column, group) in _groups.Index())
        {
            var left = units[column];
            foreach (var i in group)
            {
                var given = decimal.Min(left, (_problem.Choices[i].Maximum ?? decimal.MaxValue) - all[i]);
                all[i] += given;
                left -= given;
            }
        }

        return all;
    }

    /// <summary>The same, backwards: what each column has of all units.</summary>
    public decimal[] Gather(decimal[] all) => [.. _groups.Select(group => group.Sum(i => all[i] - _problem.Choices[i].Minimum))];

    private static List<List<int>> GroupsOf(IReadOnlyList<MixChoice> choices, bool grouped)
    {
        List<List<int>> groups = [];
        Dictionary<string, List<int>> alike = [];
        foreach (var (i, choice) in choices.Index().Where(choice => choice.Item.Contribution > 0))
        {
            var likeness = string.Join(' ', choice.Loads.Prepend(choice.Hours).Prepend(choice.Contribution).Select(figure => Rounding.Trim(figure).ToString(System.Globalization.CultureInfo.InvariantCulture)));
            if (grouped && alike.TryGetValue(likeness, out var group))
                group.Add(i);
            else
                groups.Add(alike[likeness] = [i]);
        }

        return grouped ? [.. groups.OrderByDescending(group => choices[group[0]].Contribution / choices[group[0]].Hours)] : groups;
    }

    private Taking Each(Func<MixChoice, decimal> figure)
    {
        var each = _groups.Select(group => figure(_problem.Choices[group[0]])).ToArray();
        return new Taking(each, MixGrid.Of(each), _problem.Choices.Sum(choice => figure(choice) * choice.Minimum));
    }

    /// <summary>What the market takes beyond the minimum; null where it takes any number.</summary>
    private decimal? MarketOf(List<int> group) => group.Exists(i => _problem.Choices[i].Maximum is null)
        ? null
        : group.Sum(i => _problem.Choices[i].Maximum!.Value - _problem.Choices[i].Minimum);

    private decimal[] Most(IReadOnlyList<MixRow> rows) => [.. _market.Select((market, column) => rows.Aggregate(market, (most, row) => Fewer(most, row, column)) ?? 0)];

    /// <summary>A row alone allows no more units of a column than it has room for.</summary>
    private static decimal? Fewer(decimal? most, MixRow row, int column)
    {
        if (row.Takes[column] <= 0)
            return most;
        var alone = MixProgramme.Whole(decimal.Max(0, row.Room) / row.Takes[column]);
        return most < alone ? most : alone;
    }

    private static bool CanBreak(MixRow row, decimal[] most) => !row.Holds(most.Select((units, column) => decimal.Max(0, row.Takes[column]) * units).Sum());

    /// <summary>What one unit of each column takes of something, the grid of it, and what the minimum units take.</summary>
    private sealed record Taking(decimal[] Each, decimal? Grid, decimal Least)
    {
        public MixRow Row(decimal atMost) => new(Each, Grid, atMost, Least);
    }
}
