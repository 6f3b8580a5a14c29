using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Changes;

/// <summary>
/// What a range says of a number. Usually one time in ten it is below <c>low</c>, one time in ten above <c>high</c>, and as often above as below
/// <c>likely</c>, with straight lines between. 42, 46, 47 weeks: from 41 to 47.25, half the time below 46.
/// </summary>
public sealed record RangeDistribution
{
    private const decimal Middle = 0.5m;
    private const decimal FromTenthToMiddle = 0.4m;
    private const decimal BeyondTheTenth = 1.25m;

    private RangeDistribution(decimal low, decimal likely, decimal high, bool isTriangle) =>
        (Low, Likely, High, IsTriangle) = (low, likely, high, isTriangle);

    public decimal Low { get; }

    public decimal Likely { get; }

    public decimal High { get; }

    /// <summary>Whether <see cref="Low"/> and <see cref="High"/> are never passed and <see cref="Likely"/> is the most frequent value.</summary>
    public bool IsTriangle { get; }

    /// <summary>The least that the number can be.</summary>
    public decimal Least => IsTriangle ? Low : Likely - BeyondTheTenth * (Likely - Low);

    /// <summary>The most that the number can be.</summary>
    public decimal Most => IsTriangle ? High : Likely + BeyondTheTenth * (High - Likely);

    /// <summary>The mean: 42, 46, 47 have 46 - 0.3125 x 3 = 45.0625.</summary>
    public decimal Mean => IsTriangle ? (Low + Likely + High) / 3 : Likely + 0.3125m * (High - Likely - (Likely - Low));

    /// <summary>The variance: 42, 46, 47 have 1.5625/6 x (1 + 16) - 0.9375 x 0.9375 = 3.5482.</summary>
    public decimal Variance
    {
        get
        {
            var (below, above) = (Likely - Low, High - Likely);
            var shift = 0.3125m * (above - below);
            return IsTriangle
                ? (below * below + above * above + below * above) / 18
                : 1.5625m / 6 * (above * above + below * below) - shift * shift;
        }
    }

    /// <summary>
    /// The number is beyond each end one time in ten.
    /// <paramref name="low"/> &lt;= <paramref name="likely"/> &lt;= <paramref name="high"/>.
    /// </summary>
    public static RangeDistribution OneInTenBeyond(decimal low, decimal likely, decimal high) => new(low, likely, high, isTriangle: false);

    /// <summary>
    /// The number never passes an end: the triangle.
    /// <paramref name="low"/> &lt;= <paramref name="likely"/> &lt;= <paramref name="high"/>.
    /// </summary>
    public static RangeDistribution NeverBeyond(decimal low, decimal likely, decimal high) => new(low, likely, high, isTriangle: true);

    /// <summary>
    /// The value that the number stays below with this probability, 0 to 1: at 0.1 <see cref="Low"/>, at 0.5 <see cref="Likely"/>, at 0.9
    /// <see cref="High"/>, and in a triangle at 0 and 1. Unrounded.
    /// </summary>
    public decimal At(decimal probability) => IsTriangle ? OfTriangle(probability)
        : probability <= Middle ? Likely - (Likely - Low) * (Middle - probability) / FromTenthToMiddle
        : Likely + (High - Likely) * (probability - Middle) / FromTenthToMiddle;

    private decimal OfTriangle(decimal probability)
    {
        var width = High - Low;
        return probability * width <= Likely - Low
            ? Low + SquareRoot.Of(probability * width * (Likely - Low))
            : High - SquareRoot.Of((1 - probability) * width * (High - Likely));
    }
}
