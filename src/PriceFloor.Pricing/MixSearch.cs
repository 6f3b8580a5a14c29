namespace PriceFloor.Pricing;

/// <summary>Units of a programme, and what they gain.</summary>
internal sealed record MixPlan(decimal[] Units, decimal Gain, decimal Second)
{
    public static MixPlan Of(MixProgramme programme, decimal[] units) =>
        new(units, MixProgramme.Sum(programme.Gains, units), MixProgramme.Sum(programme.Seconds, units));
}

/// <summary>
/// Finds the best plan of a programme by branch and bound: a part of all plans is dropped once its relaxation shows that nothing in it is
/// as good as the best plan found; otherwise it is narrowed, cut in two, and both halves are looked at. So nothing better is ever
/// missed, and when no part is left the best plan found is the best there is.
/// </summary>
internal sealed class MixSearch
{
    /// <summary>Parts that hold no better plan, perhaps an equally good one: looked at last, and only so many.</summary>
    private const int MostTies = 400;

    private readonly MixProgramme _programme;
    private readonly MixRelaxation _relaxation;
    private readonly MixRounding _rounding;
    private readonly Stack<MixNode> _parts = [];
    private readonly Stack<MixNode> _ties = [];
    private readonly bool _breaksTies;
    private int _tiesSeen;

    private MixSearch(MixProgramme programme, MixPlan? start, bool breaksTies)
    {
        (_programme, _breaksTies, Best) = (programme, breaksTies, start);
        _relaxation = new MixRelaxation(programme);
        _rounding = new MixRounding(programme, _relaxation);
    }

    /// <summary>The best plan found, the one of most seconds among equals; null where none was found.</summary>
    public MixPlan? Best { get; private set; }

    /// <summary>Whether every part was looked at or dropped: nothing gains more than the best plan or, without one, nothing fits.</summary>
    public bool Proven { get; private set; }

    /// <summary>Whether, moreover, no other plan gains the same and as much of the second thing.</summary>
    public bool Alone { get; private set; }

    /// <summary>No plan gains more; null where even that is not known.</summary>
    public decimal? Bound { get; private set; }

    public long Effort => _relaxation.Effort + _rounding.Effort;

    /// <param name="programme">What to search.</param>
    /// <param name="start">A plan that is known to fit, if one is.</param>
    /// <param name="effort">When to give up.</param>
    /// <param name="breaksTies">Whether to look for equally good plans too.</param>
    public static MixSearch Run(MixProgramme programme, MixPlan? start, long effort, bool breaksTies)
    {
        var search = new MixSearch(programme, start, breaksTies) { Alone = breaksTies };
        search.Look(effort);
        return search;
    }

    /// <summary>Between which units of each choice every plan lies that gains at least as much as this one.</summary>
    public static (decimal[] Least, decimal[] Most) Range(MixProgramme programme, MixPlan plan)
    {
        var search = new MixSearch(programme, plan, breaksTies: true);
        var all = new MixNode(programme);
        if (search._relaxation.MayReach(all, plan.Gain))
            search.Narrow(all);
        return (all.Decided, [.. all.Decided.Zip(all.Open, (decided, open) => decided + open)]);
    }

    private void Look(long effort)
    {
        _parts.Push(new MixNode(_programme));
        while (Effort < effort && (_parts.Count > 0 || _ties.Count > 0))
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

        Narrow(part);
        Cut(part, tied ? _ties : _parts);
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

    /// <summary>
    /// Each unit by which a choice departs from where the relaxation puts it costs its margin, so it departs by no more units than the
    /// bound is above what is needed.
    /// </summary>
    private void Narrow(MixNode part)
    {
        if (Best is null)
            return;
        var spare = decimal.Max(0, _relaxation.Bound - Needed!.Value);
        foreach (var i in _relaxation.Open)
        {
            var (open, margin) = (part.Open[i], decimal.Abs(_relaxation.Margins[i]));
            if (open == 0 || Rounding.Settle(margin * open) <= Rounding.Settle(spare))
                continue;
            var departs = MixProgramme.Whole(spare / margin);
            if (departs < open)
                Keep(part, i, departs);
        }
    }

    private void Keep(MixNode part, int choice, decimal departs)
    {
        if (_relaxation.Margins[choice] < 0)
        {
            part.Narrow(choice, 0, departs);
            return;
        }

        _relaxation.Units[choice] -= part.Open[choice] - departs;
        part.Narrow(choice, part.Open[choice] - departs, part.Open[choice]);
    }

    private void Cut(MixNode part, Stack<MixNode> onto)
    {
        var (choice, at) = WhereToCut(part);
        if (choice < 0)
            return;
        var open = part.Open[choice];
        var below = MixProgramme.Whole(at);
        var nearerBelow = at - below < 0.5m;
        if (below >= open)
            (below, nearerBelow) = (open - 1, false);
        var (low, high) = (part.Between(choice, 0, below), part.Between(choice, below + 1, open));
        onto.Push(nearerBelow ? high : low);
        onto.Push(nearerBelow ? low : high);
    }

    /// <summary>The split choice that is most broken; without one, the choice with the most open units, in half.</summary>
    private (int Choice, decimal At) WhereToCut(MixNode part)
    {
        var (choice, broken) = (-1, 0m);
        foreach (var i in part.Split)
        {
            var over = _relaxation.Units[i] - MixProgramme.Whole(decimal.Max(0, _relaxation.Units[i]));
            if (_relaxation.Solved && part.Open[i] > 0 && decimal.Min(over, 1 - over) is var by && Rounding.Settle(by) > broken)
                (choice, broken) = (i, Rounding.Settle(by));
        }

        if (choice >= 0)
            return (choice, decimal.Min(part.Open[choice], _relaxation.Units[choice]));
        foreach (var i in _relaxation.Open)
            if (part.Open[i] > 0 && (choice < 0 || part.Open[i] > part.Open[choice]))
                choice = i;
        return choice < 0 ? (-1, 0) : (choice, decimal.Truncate(part.Open[choice] / 2));
    }
}
