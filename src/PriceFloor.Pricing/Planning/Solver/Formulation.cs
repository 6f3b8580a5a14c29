using System.Globalization;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Formulates a product mix problem as integer programmes. Variables count units above the minimum; activities without a positive contribution
/// stay at their minimum, since more of them takes hours for nothing; redundant constraints are left out. Activities with the same coefficients
/// may be aggregated into one variable: two lines of at most 5 and 7 are one of at most 12, and the earlier line is filled first;
/// aggregated variables are sorted by contribution per hour.
/// </summary>
internal sealed class Formulation
{
    private readonly ProductMixProblem _problem;
    private readonly List<List<int>> _groups;
    private readonly Row _contributions;
    private readonly Row _hours;
    private readonly Row[] _loads;
    private readonly decimal?[] _market;

    public Formulation(ProductMixProblem problem, bool aggregated)
    {
        _problem = problem;
        _groups = GroupsOf(problem.Activities, aggregated);
        _contributions = RowOf(activity => -activity.Contribution);
        _hours = RowOf(activity => activity.Hours);
        _loads = [.. problem.Resources.Select((_, k) => RowOf(activity => activity.Loads[k]))];
        _market = [.. _groups.Select(MarketOf)];
    }

    /// <summary>The programme of one goal within these hours and loads; with a least contribution, that is a constraint too.</summary>
    public IntegerProgramme Programme(MixGoal goal, decimal hours, IReadOnlyList<decimal> loads, decimal? leastContribution)
    {
        List<Constraint> constraints = [_hours.AtMost(hours), .. _loads.Select((load, k) => load.AtMost(loads[k]))];
        if (leastContribution is { } least)
            constraints.Add(_contributions.AtMost(-least));
        var upperBounds = UpperBounds(constraints);
        var (objective, secondary) = goal == MixGoal.MaximumSurplus ? (_contributions, _hours) : (_hours, _contributions);
        return new IntegerProgramme(
            Array.ConvertAll(objective.Coefficients, figure => -figure),
            Array.ConvertAll(secondary.Coefficients, figure => -figure),
            [.. constraints.Where(constraint => CanBeViolated(constraint, upperBounds))],
            new decimal[upperBounds.Length],
            upperBounds);
    }

    /// <summary>Whether a resource's constraint can ever be violated; if not, it is redundant and one load more is worth nothing.</summary>
    public bool Matters(int resource) =>
        CanBeViolated(_loads[resource].AtMost(_problem.Resources[resource].Loads), UpperBounds([_hours.AtMost(_problem.Hours)]));

    /// <summary>What the minimum units leave toward what bench time must recover.</summary>
    public decimal LeastContribution => -_contributions.OfMinimums;

    /// <summary>The work of formulating a programme, beside that of solving it.</summary>
    public long Effort => _groups.Count * (2L + _loads.Length);

    public int Variables => _groups.Count;

    /// <summary>From the variables to the units of every activity, minimums included.</summary>
    public decimal[] Disaggregate(decimal[] units)
    {
        var all = _problem.Activities.Select(activity => activity.Minimum).ToArray();
        foreach (var (variable, group) in _groups.Index())
        {
            var left = units[variable];
            foreach (var i in group)
            {
                var given = decimal.Min(left, (_problem.Activities[i].Maximum ?? decimal.MaxValue) - all[i]);
                all[i] += given;
                left -= given;
            }
        }

        return all;
    }

    /// <summary>From the units of every activity to the variables.</summary>
    public decimal[] Aggregate(decimal[] all) => [.. _groups.Select(group => group.Sum(i => all[i] - _problem.Activities[i].Minimum))];

    private static List<List<int>> GroupsOf(IReadOnlyList<Activity> activities, bool aggregated)
    {
        List<List<int>> groups = [];
        Dictionary<string, List<int>> alike = [];
        foreach (var (i, activity) in activities.Index().Where(activity => activity.Item.Contribution > 0))
        {
            var figures = activity.Loads.Prepend(activity.Hours).Prepend(activity.Contribution);
            var coefficients = string.Join(' ', figures.Select(figure => Rounding.Trim(figure).ToString(CultureInfo.InvariantCulture)));
            if (aggregated && alike.TryGetValue(coefficients, out var group))
                group.Add(i);
            else
                groups.Add(alike[coefficients] = [i]);
        }

        return aggregated ? [.. groups.OrderByDescending(group => activities[group[0]].Contribution / activities[group[0]].Hours)] : groups;
    }

    private Row RowOf(Func<Activity, decimal> figure)
    {
        var coefficients = _groups.Select(group => figure(_problem.Activities[group[0]])).ToArray();
        return new Row(coefficients, CommonDivisor.Of(coefficients), _problem.Activities.Sum(activity => figure(activity) * activity.Minimum));
    }

    /// <summary>What the market takes beyond the minimum; null if it takes any number.</summary>
    private decimal? MarketOf(List<int> group) => group.Exists(i => _problem.Activities[i].Maximum is null)
        ? null
        : group.Sum(i => _problem.Activities[i].Maximum!.Value - _problem.Activities[i].Minimum);

    private decimal[] UpperBounds(IReadOnlyList<Constraint> constraints) =>
        [.. _market.Select((market, variable) => constraints.Aggregate(market, (bound, constraint) => Tighter(bound, constraint, variable)) ?? 0)];

    /// <summary>No more units of a variable than each constraint alone has slack for.</summary>
    private static decimal? Tighter(decimal? bound, Constraint constraint, int variable)
    {
        if (constraint.Coefficients[variable] <= 0)
            return bound;
        var alone = IntegerProgramme.Floor(decimal.Max(0, constraint.Slack) / constraint.Coefficients[variable]);
        return bound < alone ? bound : alone;
    }

    private static bool CanBeViolated(Constraint constraint, decimal[] upperBounds) =>
        !constraint.Holds(upperBounds.Select((units, variable) => decimal.Max(0, constraint.Coefficients[variable]) * units).Sum());

    /// <summary>The coefficients of a constraint or objective, their common divisor, and what the minimum units take.</summary>
    private sealed record Row(decimal[] Coefficients, decimal? Divisor, decimal OfMinimums)
    {
        public Constraint AtMost(decimal rightHandSide) => new(Coefficients, Divisor, rightHandSide, OfMinimums);
    }
}
