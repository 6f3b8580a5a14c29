using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Finds the best plan of a programme by branch and bound: a part of all plans is dropped once its relaxation shows that nothing in it is
/// as good as the best plan found; otherwise it is narrowed, cut in two, and both halves are looked at. So nothing better is ever
/// missed, and when no part is left the best plan found is the best there is.
/// </summary>
internal sealed class MixSearch
{
    /// <summary>How many parts that hold no better plan, but perhaps one that is as good, are looked at when all others are done.</summary>
    private const int MostTies = 10;

    private readonly MixProgramme _programme;
    private readonly MixRelaxation _relaxation;
    private readonly MixRounding _rounding;
    private readonly MixCutting _cutting;
    private readonly Stack<MixNode> _parts = [];
    private readonly Stack<MixNode> _ties = [];
    private readonly bool _breaksTies;
    private int _tiesSeen;

    private MixSearch(MixProgramme programme, MixPlan? start, long effort, bool breaksTies)
    {
        (_programme, _breaksTies, Best) = (programme, breaksTies, start);
        _relaxation = new MixRelaxation(programme, effort);
        _rounding = new MixRounding(programme, _relaxation);
        _cutting = new MixCutting(_relaxation);
    }

    /// <summary>The best plan found, the one of most seconds among equals; null where none was found.</summary>
    public MixPlan? Best { get; private set; }

    /// <summary>Whether every part was looked at or dropped: nothing gains more than the best plan or, without one, nothing fits.</summary>
    public bool Proven { get; private set; }

    /// <summary>Whether, moreover, no other plan gains the same and as much of the second thing.</summary>
    public bool Alone { get; private set; }

    /// <summary>No plan gains more; null where even that is not known.</summary>
    public decimal? Bound { get; private set; }

    /// <summary>How much arithmetic was done, as <see cref="MixRelaxation.Effort"/> counts it.</summary>
    public long Effort => _relaxation.Effort + _rounding.Effort;

    /// <summary>Searches until all is known, enough is found or the effort is spent.</summary>
    /// <param name="programme">What to search.</param>
    /// <param name="start">A plan that is known to fit, if one is.</param>
    /// <param name="effort">When to give up.</param>
    /// <param name="breaksTies">Whether to look for equally good plans too.</param>
    /// <param name="enough">A gain with which the search may stop.</param>
    public static MixSearch Run(MixProgramme programme, MixPlan? start, long effort, bool breaksTies, decimal? enough = null)
    {
        var search = new MixSearch(programme, start, effort, breaksTies) { Alone = breaksTies };
        search.Look(effort, enough ?? decimal.MaxValue);
        return search;
    }

    /// <summary>Between which units of each choice every plan lies that gains at least as much as this one.</summary>
    public static (decimal[] Least, decimal[] Most) Range(MixProgramme programme, MixPlan plan, long effort)
    {
        var search = new MixSearch(programme, plan, effort, breaksTies: true);
        var all = new MixNode(programme);
        if (search._relaxation.MayReach(all, plan.Gain))
            search._cutting.Narrow(all, plan.Gain);
        return (all.Decided, [.. all.Decided.Zip(all.Open, (decided, open) => decided + open)]);
    }

    private void Look(long effort, decimal enough)
    {
        _parts.Push(new MixNode(_programme));
        while (Effort < effort && (_parts.Count > 0 || _ties.Count > 0) && !(Best?.Gain.Reaches(enough) ?? false))
        {
            if (_parts.TryPop(out var part))
                LookAt(part);
            else if (++_tiesSeen <= MostTies)
                LookAt(_ties.Pop(), tied: true);
            else
                _ties.Clear();
        }

        Proven = _parts.Count == 0;
        Alone = Alone && Proven && _ties.Count == 0 && _tiesSeen <= MostTies;
        Bound = Proven ? Best?.Gain : BoundOfTheRest();
    }

    private decimal? BoundOfTheRest()
    {
        var bound = Best?.Gain;
        foreach (var part in _parts)
        {
            if (part.Bound is null)
                return null;
            bound = bound is null ? part.Bound : decimal.Max(bound.Value, part.Bound.Value);
        }

        return bound;
    }

    private void LookAt(MixNode part, bool tied = false)
    {
        if (!_relaxation.MayReach(part, Needed))
            return;
        if (_rounding.Round(part) is { } units)
            Offer(units);
        if (Needed is { } needed && !_relaxation.Bound.Reaches(needed))
            return;
        if (!tied && Best is not null && !_relaxation.Bound.Reaches(Better))
        {
            _ties.Push(part);
            return;
        }

        if (Needed is { } least)
            _cutting.Narrow(part, least);
        if (!_cutting.Cut(part, tied ? _ties : _parts) && _programme.Holds(part.Decided))
            Offer([.. part.Decided]);
    }

    /// <summary>The least gain that is of interest.</summary>
    private decimal? Needed => Best is null ? null : _breaksTies ? Best.Gain : Better;

    private decimal Better => Best!.Gain + _programme.Step;

    private void Offer(decimal[] units)
    {
        var plan = MixPlan.Of(_programme, units);
        if (Best is null || !Best.Gain.Reaches(plan.Gain))
        {
            (Best, Alone, _tiesSeen) = (plan, _breaksTies, 0);
            _ties.Clear();
        }
        else if (plan.Gain.Reaches(Best.Gain) && !Best.Units.AsSpan().SequenceEqual(units))
        {
            if (!Best.Second.Reaches(plan.Second))
                (Best, Alone) = (plan, _breaksTies);
            else if (plan.Second.Reaches(Best.Second))
                Alone = false;
        }
    }
}
