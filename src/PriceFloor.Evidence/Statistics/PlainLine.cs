namespace PriceFloor.Evidence.Statistics;

/// <summary>A straight line through points that weigh the same.</summary>
internal static class PlainLine
{
    /// <summary>The slope to 4 decimals and the height at 0.</summary>
    /// <param name="points">At least two that differ in x.</param>
    /// <param name="decimals">Decimals of the height.</param>
    public static (decimal Slope, decimal Height) Of(IReadOnlyList<(decimal X, decimal Y)> points, int decimals)
    {
        var line = LineFit.Of([.. points.Select(point => (double)point.X)], [.. points.Select(point => (double)point.Y)],
            [.. points.Select(_ => 1d)]);
        return (Settled.Of(line.Slope, Estimate.ShareDecimals), Settled.Of(line.Intercept, decimals));
    }
}
