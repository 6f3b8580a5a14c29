namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Solves a product mix problem lexicographically, each objective subject to the optima of those before it: the goal; then the fewest hours (or
/// the largest contribution); then, activity by activity, the most units. If the first search has proven its optimum unique, the later ones have
/// nothing to do.
/// </summary>
internal sealed class LexicographicSolver
{
    /// <summary>
    /// Effort limit of all searches of one answer together: three seconds at worst, counted in arithmetic so that every machine answers alike.
    /// </summary>
    public const long MaxEffort = 130_000_000;

    private readonly ProductMixProblem _problem;
    private readonly Formulation _formulation;
    private readonly decimal[] _loads;
    private long _effort;

    public LexicographicSolver(ProductMixProblem problem, long effort)
    {
        (_problem, _effort) = (problem, effort);
        _formulation = new Formulation(problem, aggregated: true);
        _loads = [.. problem.Resources.Select(resource => resource.Loads)];
        var programme = Programme(problem.Hours, _loads);
        var start = problem.Goal == MixGoal.FewestHours ? Carrying(programme) : null;
        if (problem.Goal == MixGoal.MaximumSurplus || start is not null)
            First = Spend(_effort / 5 * 3, effort => BranchAndBound.Run(programme, start, effort, breaksTies: true));
    }

    /// <summary>The search for the goal alone, which has an incumbent; null if no mix that brings the required contribution was found.</summary>
    public BranchAndBound? First { get; }

    /// <summary>
    /// Phase one of the fewest hours: a feasible start, any mix that brings the required contribution, found on the way to the largest
    /// contribution; null if none was found.
    /// </summary>
    private Solution? Carrying(IntegerProgramme programme)
    {
        var most = _formulation.Programme(MixGoal.MaximumSurplus, _problem.Hours, _loads, null);
        var target = _problem.RequiredContribution - _formulation.LeastContribution;
        var search = Spend(_effort / 2, effort => BranchAndBound.Run(most, null, effort, breaksTies: false, target));
        return search.Incumbent is { } best && programme.IsFeasible(best.Units) ? Solution.Of(programme, best.Units) : null;
    }

    /// <summary>The optimal units of every activity, ties broken as far as the effort goes.</summary>
    public decimal[] Units()
    {
        var all = _formulation.Disaggregate(First!.Incumbent!.Units);
        return First.Proven && !First.Unique ? InOrder(Second(all)) : all;
    }

    /// <summary>
    /// The optimum with one more hour (-1), or one more load of a resource: the whole problem solved again, null if that is not proven. It is known
    /// without solving if one more can change nothing.
    /// </summary>
    public decimal? WithOneMore(int resource, decimal optimum, int stillToAsk)
    {
        if (!First!.Proven)
            return null;
        if (resource < 0 ? _problem.Goal == MixGoal.FewestHours : !_formulation.Matters(resource))
            return optimum;
        if (_effort / stillToAsk < _formulation.Effort)
            return null;
        var loads = _loads.Select((most, k) => k == resource ? most + 1 : most).ToArray();
        var programme = Programme(resource < 0 ? _problem.Hours + 1 : _problem.Hours, loads);
        var again = Spend(_effort / stillToAsk, effort => BranchAndBound.Run(programme, First.Incumbent, effort, breaksTies: false));
        return again.Proven ? Evaluation.Optimum(_problem, _formulation.Disaggregate(again.Incumbent!.Units)) : null;
    }

    private IntegerProgramme Programme(decimal hours, decimal[] loads) =>
        _formulation.Programme(_problem.Goal, hours, loads, Required);

    private decimal? Required => _problem.Goal == MixGoal.FewestHours ? _problem.RequiredContribution : null;

    private BranchAndBound Spend(long effort, Func<long, BranchAndBound> search)
    {
        var done = search(effort);
        _effort = long.Max(0, _effort - done.Effort - _formulation.Effort);
        return done;
    }

    /// <summary>Keeps the optimum of the goal as a constraint, and optimises the second objective.</summary>
    private (decimal[] Units, bool Unique) Second(decimal[] all)
    {
        var programme = _problem.Goal == MixGoal.MaximumSurplus
            ? _formulation.Programme(MixGoal.FewestHours, _problem.Hours, _loads, Evaluation.Contribution(_problem, all))
            : _formulation.Programme(MixGoal.MaximumSurplus, Evaluation.Hours(_problem, all), _loads, null);
        var start = Solution.Of(programme, _formulation.Aggregate(all));
        var search = Spend(_effort / 3, effort => BranchAndBound.Run(programme, start, effort, breaksTies: true));
        return (_formulation.Disaggregate(search.Incumbent!.Units), search.Unique);
    }

    /// <summary>Keeps both optima, and gives each activity in turn as many units as it can have.</summary>
    private decimal[] InOrder((decimal[] Units, bool Unique) second)
    {
        if (second.Unique)
            return second.Units;
        var formulation = new Formulation(_problem, aggregated: false);
        var units = formulation.Aggregate(second.Units);
        var goal = formulation.Programme(_problem.Goal, _problem.Hours, _loads, Required);
        var (lower, upper) = BranchAndBound.BoundsOf(goal, Solution.Of(goal, units), _effort);
        var reserve = _effort * 2 / 3;
        var (hours, contribution) = (Evaluation.Hours(_problem, second.Units), Evaluation.Contribution(_problem, second.Units));
        var within = formulation.Programme(MixGoal.FewestHours, hours, _loads, contribution);
        upper = [.. upper.Zip(within.UpperBounds, decimal.Min)];
        for (var i = 0; i < formulation.Variables; i++)
        {
            if (units[i] < upper[i])
            {
                var unitsOfThis = within.With([.. units.Select((_, j) => j == i ? 1m : 0m)], lower, upper);
                var start = Solution.Of(unitsOfThis, units);
                units = Spend((_effort - reserve) / 8, effort => BranchAndBound.Run(unitsOfThis, start, effort, breaksTies: false)).Incumbent!.Units;
            }

            upper[i] = lower[i] = units[i];
        }

        return formulation.Disaggregate(units);
    }
}
