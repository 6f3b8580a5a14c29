using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Solves a mix problem in three rounds, each within what the one before has proven: the goal; among the plans that reach it the fewest
/// hours (or the largest contribution); among those, choice by choice, the most units. Where the first search has shown that no other
/// plan is as good, the later rounds have nothing to do.
/// </summary>
internal sealed class MixSolver
{
    /// <summary>What all searches of one answer may do together: three seconds at worst, counted in arithmetic so that every machine answers alike.</summary>
    public const long MostEffort = 130_000_000;

    private readonly MixProblem _problem;
    private readonly MixFrame _frame;
    private readonly decimal[] _loads;
    private long _effort;

    public MixSolver(MixProblem problem, long effort)
    {
        (_problem, _effort) = (problem, effort);
        _frame = new MixFrame(problem, grouped: true);
        _loads = [.. problem.Limits.Select(limit => limit.Loads)];
        var programme = Programme(problem.Hours, _loads);
        var start = problem.Goal == MixGoal.FewestHours ? Carrying(programme) : null;
        if (problem.Goal == MixGoal.MaximumSurplus || start is not null)
            First = Spend(_effort / 5 * 3, effort => MixSearch.Run(programme, start, effort, breaksTies: true));
    }

    /// <summary>The search for the goal alone, which has found a plan; null where no plan that carries the pool was found.</summary>
    public MixSearch? First { get; }

    /// <summary>Any plan that carries the pool, found on the way to the largest contribution; null where there is none or none was found.</summary>
    private MixPlan? Carrying(MixProgramme programme)
    {
        var most = _frame.Programme(MixGoal.MaximumSurplus, _problem.Hours, _loads, null);
        var search = Spend(_effort / 2, effort => MixSearch.Run(most, null, effort, breaksTies: false, enough: _problem.Pool - _frame.LeastContribution));
        return search.Best is { } best && programme.Holds(best.Units) ? MixPlan.Of(programme, best.Units) : null;
    }

    /// <summary>The best plan's units of every choice, ties broken as far as the effort goes.</summary>
    public decimal[] Units()
    {
        var all = _frame.Spread(First!.Best!.Units);
        return First.Proven && !First.Alone ? InOrder(Second(all)) : all;
    }

    /// <summary>What one more hour (-1), or one more load of a limit, would gain: the whole problem solved again, null where that is not proven.</summary>
    public decimal? WorthOfOneMore(int limit, int stillToAsk)
    {
        if (!First!.Proven)
            return null;
        if (limit < 0 ? _problem.Goal == MixGoal.FewestHours : !_frame.Matters(limit))
            return 0;
        if (_effort / stillToAsk < _frame.Effort)
            return null;
        var loads = _loads.Select((most, k) => k == limit ? most + 1 : most).ToArray();
        var programme = Programme(limit < 0 ? _problem.Hours + 1 : _problem.Hours, loads);
        var again = Spend(_effort / stillToAsk, effort => MixSearch.Run(programme, First.Best, effort, breaksTies: false));
        return again.Proven ? Rounding.Settle(again.Best!.Gain - First.Best!.Gain) : null;
    }

    private MixProgramme Programme(decimal hours, decimal[] loads) =>
        _frame.Programme(_problem.Goal, hours, loads, Pool);

    private decimal? Pool => _problem.Goal == MixGoal.FewestHours ? _problem.Pool : null;

    private MixSearch Spend(long effort, Func<long, MixSearch> search)
    {
        var done = search(effort);
        _effort = long.Max(0, _effort - done.Effort - _frame.Effort);
        return done;
    }

    /// <summary>Holds what the goal has reached, and asks for the second thing.</summary>
    private (decimal[] Units, bool Alone) Second(decimal[] all)
    {
        var programme = _problem.Goal == MixGoal.MaximumSurplus
            ? _frame.Programme(MixGoal.FewestHours, _problem.Hours, _loads, MixTotals.Contribution(_problem, all))
            : _frame.Programme(MixGoal.MaximumSurplus, MixTotals.Hours(_problem, all), _loads, null);
        var search = Spend(_effort / 3, effort => MixSearch.Run(programme, MixPlan.Of(programme, _frame.Gather(all)), effort, breaksTies: true));
        return (_frame.Spread(search.Best!.Units), search.Alone);
    }

    /// <summary>Holds both, and gives each choice in turn as many units as it can have.</summary>
    private decimal[] InOrder((decimal[] Units, bool Alone) second)
    {
        if (second.Alone)
            return second.Units;
        var frame = new MixFrame(_problem, grouped: false);
        var units = frame.Gather(second.Units);
        var goal = frame.Programme(_problem.Goal, _problem.Hours, _loads, Pool);
        var (least, most) = MixSearch.Range(goal, MixPlan.Of(goal, units), _effort);
        var reserve = _effort * 2 / 3;
        var within = frame.Programme(MixGoal.FewestHours, MixTotals.Hours(_problem, second.Units), _loads, MixTotals.Contribution(_problem, second.Units));
        most = [.. most.Zip(within.Most, decimal.Min)];
        for (var i = 0; i < frame.Columns; i++)
        {
            if (units[i] < most[i])
            {
                var asked = within.Asking([.. units.Select((_, j) => j == i ? 1m : 0m)], least, most);
                units = Spend((_effort - reserve) / 8, effort => MixSearch.Run(asked, MixPlan.Of(asked, units), effort, breaksTies: false)).Best!.Units;
            }

            most[i] = least[i] = units[i];
        }

        return frame.Spread(units);
    }
}
