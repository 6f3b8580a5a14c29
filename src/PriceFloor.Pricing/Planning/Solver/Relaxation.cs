using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// The LP relaxation of a node: its integer programme without integrality. What matters is the bound: for any dual prices y &gt;= 0 weak duality
/// gives objective &lt;= sum(y * slack) + sum(max(0, reduced cost) * range). So rounding errors, or stopping early, can make the bound looser
/// but never wrong. It is solved by the bounded dual simplex method with bound flipping: it starts dual feasible, with every variable at the bound
/// that its objective coefficient favours, and raises the dual price of a violated constraint until it is satisfied.
/// One constraint of 10 hours, objective 30 for 4 hours and 20 for 4 hours, up to 2 each: an hour has a dual price of 5, and the bound is
/// 10 * 5 + 2 * (30 - 20) = 70.
/// </summary>
internal sealed class Relaxation(IntegerProgramme programme, long maxEffort)
{
    /// <summary>Rounding error, as large as it may become in the sums of a year.</summary>
    private const decimal Tiny = 0.000000000000001m;

    private readonly Constraint[] _constraints = programme.Constraints;
    private readonly decimal[] _objective = programme.Objective;
    private readonly Breakpoints _breakpoints = new(programme);
    private readonly int[] _free = new int[programme.Count];
    private int _freeCount;
    private Basis _basis = new([], [], programme);

    /// <summary>Upper bound of the objective in the node.</summary>
    public decimal Bound { get; private set; }

    /// <summary>
    /// The bound that follows from the present dual prices and reduced costs; the parent's may be tighter, but belongs to other reduced costs.
    /// </summary>
    public decimal DualBound { get; private set; }

    /// <summary>Objective coefficient of each variable less the imputed cost of what one unit takes.</summary>
    public decimal[] ReducedCosts { get; } = new decimal[programme.Count];

    /// <summary>The optimal solution of the relaxation, in units above the node's lower bounds.</summary>
    public decimal[] Units { get; } = new decimal[programme.Count];

    /// <summary>Whether it was solved to optimality; otherwise only the bound means anything.</summary>
    public bool Solved { get; private set; }

    /// <summary>Arithmetic done so far, roughly in multiplications: the same on every machine.</summary>
    public long Effort { get; private set; }

    /// <summary>Variables of the node that are not fixed, or are basic.</summary>
    public ReadOnlySpan<int> Free => _free.AsSpan(0, _freeCount);

    /// <summary>Solves the relaxation; false if the node is fathomed, because it is infeasible or its bound is below the cutoff.</summary>
    public bool Solve(Node node, decimal? cutoff)
    {
        Solved = false;
        _basis = new Basis(node.Tight, node.Basic, programme);
        ListFree(node);
        for (var iterations = 20 + 4 * (_constraints.Length + _freeCount); iterations > 0; iterations--)
        {
            if (!Price(node))
                continue;
            Bound = node.Bound < DualBound ? node.Bound.Value : DualBound;
            if (cutoff is { } least && !Bound.Reaches(least))
                return false;
            FindUnits(node);
            var (constraint, basic, by) = MostViolated(node);
            Solved = by == 0;
            if (Solved)
                break;
            if (!Pivot(node, constraint, basic, by))
                return false;
            if (Effort > maxEffort)
                break;
        }

        (node.Tight, node.Basic, node.Bound) = (_basis.Tight, _basis.Basic, Bound);
        return true;
    }

    private void ListFree(Node node)
    {
        Effort += programme.Count / 2;
        _freeCount = 0;
        Array.Clear(Units);
        for (var i = 0; i < programme.Count; i++)
            if (node.Ranges[i] > 0 || Array.IndexOf(node.Basic, i) >= 0)
                _free[_freeCount++] = i;
    }

    /// <summary>Dual prices, reduced costs and the dual bound of the basis; false if it was singular, and the empty basis takes its place.</summary>
    private bool Price(Node node)
    {
        var size = _basis.Tight.Length;
        if (!_basis.Invert())
        {
            _basis = new Basis([], [], programme);
            return false;
        }

        _basis.FindDualPrices();
        var bound = node.Objective;
        for (var t = 0; t < size; t++)
            bound += _basis.DualPrices[t] * node.Slack[_basis.Tight[t]];
        foreach (var i in Free)
        {
            ReducedCosts[i] = _objective[i] - _basis.ImputedCost(i);
            if (ReducedCosts[i] > 0)
                bound += ReducedCosts[i] * node.Ranges[i];
            if (decimal.Abs(ReducedCosts[i]) > Tiny)
                node.AtUpperBound[i] = ReducedCosts[i] > 0;
        }

        DualBound = bound;
        Effort += 80 + _freeCount * (1L + size) + 2L * size * size * size;
        return true;
    }

    /// <summary>The nonbasic variables at their bounds, the basic ones as the tight constraints determine them.</summary>
    private void FindUnits(Node node)
    {
        foreach (var i in Free)
            Units[i] = node.AtUpperBound[i] ? node.Ranges[i] : 0;
        foreach (var i in _basis.Basic)
            Units[i] = 0;
        var remaining = Array.ConvertAll(_basis.Tight, constraint => node.Slack[constraint] - Taken(constraint));
        _basis.SolveForBasic(remaining, Units);
    }

    private decimal Taken(int constraint)
    {
        var coefficients = _constraints[constraint].Coefficients;
        var sum = 0m;
        foreach (var i in Free)
            if (Units[i] != 0 && coefficients[i] != 0)
                sum += coefficients[i] * Units[i];
        Effort += _freeCount;
        return sum;
    }

    /// <summary>
    /// The basic variable furthest outside its bounds, by its position in the basis, or else the constraint violated most; by 0 if primal feasible.
    /// </summary>
    private (int Constraint, int Basic, decimal By) MostViolated(Node node)
    {
        var worst = (Constraint: -1, Basic: -1, By: 0m);
        for (var s = 0; s < _basis.Basic.Length; s++)
        {
            var i = _basis.Basic[s];
            var by = Units[i] < 0 ? Units[i] : decimal.Max(0, Units[i] - node.Ranges[i]);
            if (decimal.Abs(by) > Tiny && decimal.Abs(by) > decimal.Abs(worst.By))
                worst = (-1, s, by);
        }

        if (worst.By != 0)
            return worst;
        for (var r = 0; r < _constraints.Length; r++)
            if (Array.IndexOf(_basis.Tight, r) < 0 && Taken(r) - node.Slack[r] is var by && by > Tiny && by > worst.By)
                worst = (r, -1, by);
        return worst;
    }

    /// <summary>
    /// One iteration of the dual simplex method with the long-step ratio test: along the dual ray each variable whose reduced cost changes sign
    /// flips to its other bound, which removes a part of the violation; the one that removes the rest enters the basis, unless a dual price
    /// reaches 0 before. False if the ray is unbounded, so the node is infeasible.
    /// </summary>
    private bool Pivot(Node node, int constraint, int leaving, decimal by)
    {
        Effort += _freeCount * (4L + _basis.Tight.Length);
        var rates = constraint >= 0 ? _basis.DualRates(_constraints[constraint].Coefficients) : _basis.DualRates(leaving, by > 0);
        var violation = decimal.Abs(by);
        foreach (var (_, variable, tight) in _breakpoints.Of(node, _basis, Free, ReducedCosts, constraint, rates))
        {
            if (variable >= 0)
            {
                violation -= decimal.Abs(_breakpoints.Rate(variable, _basis, constraint, rates)) * node.Ranges[variable];
                if (violation > 0)
                {
                    node.AtUpperBound[variable] = !node.AtUpperBound[variable];
                    continue;
                }
            }

            if (leaving >= 0)
                node.AtUpperBound[_basis.Basic[leaving]] = by > 0;
            _basis = _basis.Pivoted(leaving, variable, tight, constraint);
            return true;
        }

        if (violation > IntegerProgramme.Tolerance)
            return false;
        _basis = new Basis([], [], programme);
        return true;
    }
}
