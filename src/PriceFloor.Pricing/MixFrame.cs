namespace PriceFloor.Pricing;

/// <summary>
/// A mix problem as whole-number programmes. The minimum units are taken for granted; choices that leave nothing for the pool keep to
/// theirs, since more of them takes hours for nothing; rows that cannot be broken are left out. Choices that are alike in all but their
/// range may be counted together: two lines of at most 5 and 7 are one of at most 12, and the earlier line is filled first.
/// </summary>
internal sealed class MixFrame
{
    private readonly MixProblem _problem;
    private readonly List<List<int>> _groups;
    private readonly decimal[] _contributions;
    private readonly decimal[] _hours;
    private readonly decimal[][] _loads;
    private readonly decimal _leastContribution;
    private readonly decimal _leastHours;
    private readonly decimal[] _leastLoads;
    private readonly decimal[] _most;

    public MixFrame(MixProblem problem, bool grouped)
    {
        _problem = problem;
        _groups = GroupsOf(problem.Choices, grouped);
        _contributions = Each(choice => choice.Contribution);
        _hours = Each(choice => choice.Hours);
        _loads = [.. problem.Limits.Select((_, k) => Each(choice => choice.Loads[k]))];
        _leastContribution = problem.Choices.Sum(choice => choice.Contribution * choice.Minimum);
        _leastHours = problem.Choices.Sum(choice => choice.Hours * choice.Minimum);
        _leastLoads = [.. problem.Limits.Select((_, k) => problem.Choices.Sum(choice => choice.Loads[k] * choice.Minimum))];
        _most = [.. _groups.Select((group, column) => MostOf(group, column))];
    }

    /// <summary>The most, or the fewest hours, within these hours and loads; a null least contribution asks for none.</summary>
    public MixProgramme Programme(MixGoal goal, decimal hours, IReadOnlyList<decimal> loads, decimal? leastContribution)
    {
        List<MixRow> rows = [new MixRow(_hours, hours, _leastHours), .. _loads.Select((takes, k) => new MixRow(takes, loads[k], _leastLoads[k]))];
        if (leastContribution is { } least)
            rows.Add(new MixRow(Negative(_contributions), -least, -_leastContribution));
        var (first, second) = goal == MixGoal.MaximumSurplus ? (_contributions, Negative(_hours)) : (Negative(_hours), _contributions);
        return new MixProgramme(first, second, [.. rows.Where(CanBreak)], new decimal[_most.Length], _most);
    }

    /// <summary>Whether a limit can ever stand in the way, so that one load more could be worth something.</summary>
    public bool Matters(int limit) => CanBreak(new MixRow(_loads[limit], _problem.Limits[limit].Loads, _leastLoads[limit]));

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

        return groups;
    }

    private decimal[] Each(Func<MixChoice, decimal> figure) => [.. _groups.Select(group => figure(_problem.Choices[group[0]]))];

    private static decimal[] Negative(decimal[] figures) => Array.ConvertAll(figures, figure => -figure);

    /// <summary>What the market takes; where it takes any number, what the hours of the year would make, and one hour more.</summary>
    private decimal MostOf(List<int> group, int column)
    {
        var most = decimal.Max(0, MixProgramme.Whole((_problem.Hours + 1 - _leastHours) / _hours[column]));
        return group.Exists(i => _problem.Choices[i].Maximum is null)
            ? most
            : decimal.Min(most, group.Sum(i => _problem.Choices[i].Maximum!.Value - _problem.Choices[i].Minimum));
    }

    private bool CanBreak(MixRow row)
    {
        var sum = 0m;
        for (var i = 0; i < _most.Length; i++)
            sum += decimal.Max(0, row.Takes[i]) * _most[i];
        return !row.Holds(sum);
    }
}
