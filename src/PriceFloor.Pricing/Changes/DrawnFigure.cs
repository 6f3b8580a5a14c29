using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Changes;

/// <summary>
/// One figure in every draw that has an answer, in order of draw and settled to 12 decimals, so no number of threads can change a sum.
/// </summary>
public sealed class DrawnFigure
{
    private readonly decimal[] _values;
    private readonly Lazy<decimal[]> _sorted;
    private readonly Lazy<Deviations?> _scaled;

    /// <param name="values">The figure in each draw, in order of draw.</param>
    public DrawnFigure(IEnumerable<decimal> values)
    {
        _values = [.. values.Select(Rounding.Settle)];
        _sorted = new Lazy<decimal[]>(() => [.. _values.Order()]);
        _scaled = new Lazy<Deviations?>(ScaledDeviations);
    }

    /// <summary>The figure in each draw.</summary>
    public IReadOnlyList<decimal> Values => _values;

    /// <summary>The mean of the draws.</summary>
    public decimal Mean => _values.Sum() / _values.Length;

    /// <summary>
    /// The figure that this share of the draws does not pass: the smallest but ceil(share x N) - 1. Of 1, 2, 3, 4 at 0.5: 2; at 0.51: 3.
    /// </summary>
    /// <param name="share">Above 0, at most 1.</param>
    public decimal At(decimal share) => _sorted.Value[(int)Rounding.Up(share * _values.Length, 0) - 1];

    /// <summary>
    /// Each draw less the mean, over the largest of them, so that no square is too large; null if the figure is the same in every draw.
    /// </summary>
    internal Deviations? Scaled => _scaled.Value;

    private Deviations? ScaledDeviations()
    {
        var mean = Mean;
        var largest = _values.Max(value => decimal.Max(value - mean, mean - value));
        if (Rounding.Settle(largest) == 0)
            return null;
        var scaled = Array.ConvertAll(_values, value => (value - mean) / largest);
        return new Deviations(scaled, scaled.Sum(value => value * value));
    }

    internal sealed record Deviations(IReadOnlyList<decimal> Values, decimal SumOfSquares);
}
