namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>The breakpoints of the ratio test: where reduced costs and dual prices reach 0 as the dual prices move along a ray.</summary>
internal sealed class Breakpoints(IntegerProgramme programme)
{
    /// <summary>Rates that are no more than the rounding error of an inverse.</summary>
    private const decimal RoundingError = 0.00000000000000000001m;

    private readonly List<(decimal At, int Variable, int Tight)> _points = [];

    /// <summary>
    /// The nearest first: a nonbasic variable whose reduced cost changes sign there, or the position of a tight constraint whose dual price does;
    /// the other is -1.
    /// </summary>
    public IReadOnlyList<(decimal At, int Variable, int Tight)> Of(
        Node node, Basis basis, ReadOnlySpan<int> free, decimal[] reducedCosts, int constraint, decimal[] rates)
    {
        _points.Clear();
        for (var t = 0; t < rates.Length; t++)
            if (rates[t] > RoundingError)
                _points.Add((basis.DualPrices[t] / rates[t], -1, t));
        foreach (var i in free)
        {
            if (node.Ranges[i] == 0 || Array.IndexOf(basis.Basic, i) >= 0)
                continue;
            var rate = Rate(i, basis, constraint, rates);
            if (node.AtUpperBound[i] && rate > RoundingError)
                _points.Add((decimal.Max(0, reducedCosts[i]) / rate, i, -1));
            else if (!node.AtUpperBound[i] && rate < -RoundingError)
                _points.Add((decimal.Min(0, reducedCosts[i]) / rate, i, -1));
        }

        _points.Sort();
        return _points;
    }

    /// <summary>The rate at which the reduced cost of a variable falls along the ray.</summary>
    public decimal Rate(int variable, Basis basis, int constraint, decimal[] rates)
    {
        var rate = constraint >= 0 ? programme.Constraints[constraint].Coefficients[variable] : 0;
        for (var t = 0; t < rates.Length; t++)
            rate -= rates[t] * programme.Constraints[basis.Tight[t]].Coefficients[variable];
        return rate;
    }
}
