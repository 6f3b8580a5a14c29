using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Splits a node in two by the most fractional variable or, if none is fractional, by the one with the widest range.</summary>
internal sealed class Branching(Relaxation relaxation)
{
    /// <summary>Puts both children on the stack, the more promising one on top; false if every variable is fixed.</summary>
    public bool Branch(Node node, Stack<Node> onto)
    {
        var (variable, at) = MostFractional(node) ?? Widest(node);
        if (variable < 0)
            return false;
        var range = node.Ranges[variable];
        var below = decimal.Min(range - 1, IntegerProgramme.Floor(at));
        var (down, up) = (node.Child(variable, 0, below), node.Child(variable, below + 1, range));
        var downFirst = at - below < 0.5m;
        onto.Push(downFirst ? up : down);
        onto.Push(downFirst ? down : up);
        return true;
    }

    /// <summary>The basic variable whose value is furthest from an integer.</summary>
    private (int Variable, decimal At)? MostFractional(Node node)
    {
        (int, decimal)? found = null;
        var furthest = 0m;
        foreach (var i in node.Basic)
        {
            if (!relaxation.Solved || node.Ranges[i] == 0)
                continue;
            var at = decimal.Max(0, relaxation.Units[i]);
            var fraction = at - IntegerProgramme.Floor(at);
            if (Rounding.Settle(decimal.Min(fraction, 1 - fraction)) is var by && by > furthest)
                (found, furthest) = ((i, at), by);
        }

        return found;
    }

    /// <summary>The variable with the widest range, split in the middle.</summary>
    private (int Variable, decimal At) Widest(Node node)
    {
        var variable = -1;
        foreach (var i in relaxation.Free)
            if (node.Ranges[i] > 0 && (variable < 0 || node.Ranges[i] > node.Ranges[variable]))
                variable = i;
        return (variable, variable < 0 ? 0 : decimal.Truncate(node.Ranges[variable] / 2));
    }
}
