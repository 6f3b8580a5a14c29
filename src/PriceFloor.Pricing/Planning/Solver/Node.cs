namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A node of the branch-and-bound tree: the subproblem in which each variable lies between a lower bound and so many units above it. The final
/// basis of the parent's relaxation is kept as a warm start.
/// </summary>
internal sealed class Node
{
    private readonly IntegerProgramme _programme;

    /// <summary>The root.</summary>
    public Node(IntegerProgramme programme)
    {
        _programme = programme;
        LowerBounds = new decimal[programme.Count];
        Ranges = new decimal[programme.Count];
        Slack = [.. programme.Constraints.Select(constraint => constraint.Slack)];
        AtUpperBound = [.. programme.Objective.Select(coefficient => coefficient > 0)];
        Tight = [];
        Basic = [];
        for (var i = 0; i < programme.Count; i++)
            Restrict(i, programme.LowerBounds[i], programme.UpperBounds[i]);
    }

    private Node(Node parent)
    {
        _programme = parent._programme;
        LowerBounds = [.. parent.LowerBounds];
        Ranges = [.. parent.Ranges];
        Slack = [.. parent.Slack];
        AtUpperBound = [.. parent.AtUpperBound];
        (Tight, Basic, Objective, Bound) = (parent.Tight, parent.Basic, parent.Objective, parent.Bound);
    }

    public decimal[] LowerBounds { get; }

    /// <summary>Upper bound less lower bound of each variable; 0 if it is fixed.</summary>
    public decimal[] Ranges { get; }

    /// <summary>The slack of each constraint with every variable at its lower bound.</summary>
    public decimal[] Slack { get; }

    /// <summary>The objective with every variable at its lower bound.</summary>
    public decimal Objective { get; private set; }

    /// <summary>Upper bound of the objective in this subproblem, as far as is known; null before its or its parent's relaxation was solved.</summary>
    public decimal? Bound { get; set; }

    /// <summary>Whether a nonbasic variable is at its upper bound.</summary>
    public bool[] AtUpperBound { get; }

    /// <summary>The tight constraints of the warm start.</summary>
    public int[] Tight { get; set; }

    /// <summary>The basic variables of the warm start.</summary>
    public int[] Basic { get; set; }

    /// <summary>The child in which a variable has at least and at most so many units above its lower bound.</summary>
    public Node Child(int variable, decimal least, decimal most)
    {
        var child = new Node(this);
        child.Restrict(variable, least, most);
        return child;
    }

    /// <summary>Tightens the bounds of a variable; both are counted from its present lower bound.</summary>
    public void Restrict(int variable, decimal least, decimal most)
    {
        Ranges[variable] = most - least;
        if (least == 0)
            return;
        LowerBounds[variable] += least;
        Objective += least * _programme.Objective[variable];
        for (var r = 0; r < Slack.Length; r++)
            Slack[r] -= least * _programme.Constraints[r].Coefficients[variable];
    }
}
