namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Reduced-cost bound tightening. Each unit by which a variable departs from the bound that its reduced cost favours costs that reduced cost:
/// with a dual bound of 70, a cutoff of 55 and a reduced cost of 10, it departs by one unit at most.
/// </summary>
internal sealed class BoundTightening(Relaxation relaxation)
{
    /// <summary>Excludes solutions whose objective is below the cutoff.</summary>
    public void Tighten(Node node, decimal cutoff)
    {
        var gap = decimal.Max(0, relaxation.DualBound - cutoff) + IntegerProgramme.Tolerance;
        foreach (var i in relaxation.Free)
        {
            var (range, reducedCost) = (node.Ranges[i], decimal.Abs(relaxation.ReducedCosts[i]));
            if (reducedCost * range <= gap)
                continue;
            var departs = IntegerProgramme.Floor(gap / reducedCost);
            if (departs >= range)
                continue;
            if (relaxation.ReducedCosts[i] < 0)
            {
                node.Restrict(i, 0, departs);
                continue;
            }

            relaxation.Units[i] -= range - departs;
            node.Restrict(i, range - departs, range);
        }
    }
}
