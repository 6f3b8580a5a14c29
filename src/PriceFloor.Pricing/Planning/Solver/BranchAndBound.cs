using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Solves an integer programme by branch and bound: a node is fathomed once its relaxation shows that nothing in it is as good as the incumbent;
/// otherwise its bounds are tightened, it is branched on, and both children are explored. So nothing better is ever missed, and when no node is
/// left the incumbent is optimal.
/// </summary>
internal sealed class BranchAndBound
{
    /// <summary>How many nodes that hold no better solution, but perhaps one that is as good, are explored when all others are done.</summary>
    private const int MostTies = 10;

    private readonly IntegerProgramme _programme;
    private readonly Relaxation _relaxation;
    private readonly RoundingHeuristic _heuristic;
    private readonly BoundTightening _tightening;
    private readonly Branching _branching;
    private readonly Stack<Node> _nodes = [];
    private readonly Stack<Node> _ties = [];
    private readonly bool _breaksTies;
    private int _tiesExplored;

    private BranchAndBound(IntegerProgramme programme, Solution? start, long effort, bool breaksTies)
    {
        (_programme, _breaksTies, Incumbent) = (programme, breaksTies, start);
        _relaxation = new Relaxation(programme, effort);
        _heuristic = new RoundingHeuristic(programme, _relaxation);
        _tightening = new BoundTightening(_relaxation);
        _branching = new Branching(_relaxation);
    }

    /// <summary>The best solution found, the one with the largest secondary objective among ties; null if none was found.</summary>
    public Solution? Incumbent { get; private set; }

    /// <summary>Whether every node was explored or fathomed: the incumbent is optimal or, without one, the programme is infeasible.</summary>
    public bool Proven { get; private set; }

    /// <summary>Whether, moreover, no other solution is as good in both objectives.</summary>
    public bool Unique { get; private set; }

    /// <summary>Upper bound of the objective; null if even that is not known.</summary>
    public decimal? Bound { get; private set; }

    /// <summary>Arithmetic done, as <see cref="Relaxation.Effort"/> counts it.</summary>
    public long Effort => _relaxation.Effort + _heuristic.Effort;

    /// <summary>Searches until optimality is proven, the target is reached or the effort is spent.</summary>
    /// <param name="programme">What to solve.</param>
    /// <param name="start">A feasible solution to start from, if one is known.</param>
    /// <param name="effort">The effort limit.</param>
    /// <param name="breaksTies">Whether to look for equally good solutions too.</param>
    /// <param name="target">An objective at which the search may stop.</param>
    public static BranchAndBound Run(IntegerProgramme programme, Solution? start, long effort, bool breaksTies, decimal? target = null)
    {
        var search = new BranchAndBound(programme, start, effort, breaksTies) { Unique = breaksTies };
        search.Explore(effort, target ?? decimal.MaxValue);
        return search;
    }

    /// <summary>Bounds of each variable within which every solution lies whose objective is at least as large as this one's.</summary>
    public static (decimal[] Lower, decimal[] Upper) BoundsOf(IntegerProgramme programme, Solution solution, long effort)
    {
        var search = new BranchAndBound(programme, solution, effort, breaksTies: true);
        var root = new Node(programme);
        if (search._relaxation.Solve(root, solution.Objective))
            search._tightening.Tighten(root, solution.Objective);
        return (root.LowerBounds, [.. root.LowerBounds.Zip(root.Ranges, (lower, range) => lower + range)]);
    }

    private void Explore(long effort, decimal target)
    {
        _nodes.Push(new Node(_programme));
        while (Effort < effort && (_nodes.Count > 0 || _ties.Count > 0) && !(Incumbent?.Objective.Reaches(target) ?? false))
        {
            if (_nodes.TryPop(out var node))
                Explore(node);
            else if (++_tiesExplored <= MostTies)
                Explore(_ties.Pop(), tied: true);
            else
                _ties.Clear();
        }

        Proven = _nodes.Count == 0;
        Unique = Unique && Proven && _ties.Count == 0 && _tiesExplored <= MostTies;
        Bound = Proven ? Incumbent?.Objective : BoundOfOpenNodes();
    }

    private decimal? BoundOfOpenNodes()
    {
        var bound = Incumbent?.Objective;
        foreach (var node in _nodes)
        {
            if (node.Bound is null)
                return null;
            bound = bound is null ? node.Bound : decimal.Max(bound.Value, node.Bound.Value);
        }

        return bound;
    }

    private void Explore(Node node, bool tied = false)
    {
        if (!_relaxation.Solve(node, Cutoff))
            return;
        if (_heuristic.Round(node) is { } units)
            Offer(units);
        if (Cutoff is { } cutoff && !_relaxation.Bound.Reaches(cutoff))
            return;
        if (!tied && Incumbent is not null && !_relaxation.Bound.Reaches(NextBetter))
        {
            _ties.Push(node);
            return;
        }

        if (Cutoff is { } least)
            _tightening.Tighten(node, least);
        if (!_branching.Branch(node, tied ? _ties : _nodes) && _programme.IsFeasible(node.LowerBounds))
            Offer([.. node.LowerBounds]);
    }

    /// <summary>The least objective that is of interest: better than the incumbent's, or as good if ties are broken.</summary>
    private decimal? Cutoff => Incumbent is null ? null : _breaksTies ? Incumbent.Objective : NextBetter;

    private decimal NextBetter => Incumbent!.Objective + _programme.ObjectiveStep;

    /// <summary>Makes a solution the incumbent if it is better, or as good and better in the secondary objective.</summary>
    private void Offer(decimal[] units)
    {
        var solution = Solution.Of(_programme, units);
        if (Incumbent is null || !Incumbent.Objective.Reaches(solution.Objective))
        {
            (Incumbent, Unique, _tiesExplored) = (solution, _breaksTies, 0);
            _ties.Clear();
        }
        else if (solution.Objective.Reaches(Incumbent.Objective) && !Incumbent.Units.AsSpan().SequenceEqual(units))
        {
            if (!Incumbent.Secondary.Reaches(solution.Secondary))
                (Incumbent, Unique) = (solution, _breaksTies);
            else if (solution.Secondary.Reaches(Incumbent.Secondary))
                Unique = false;
        }
    }
}
