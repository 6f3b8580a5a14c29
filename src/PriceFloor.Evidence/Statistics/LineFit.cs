namespace PriceFloor.Evidence.Statistics;

/// <summary>A straight line through weighted points, by least squares.</summary>
/// <param name="Slope">b.</param>
/// <param name="Intercept">The height at 0.</param>
/// <param name="Variance">s2: of the weighted residuals, by m-2.</param>
/// <param name="Sxx">The weighted squares of x about its mean.</param>
/// <param name="MeanX">x'.</param>
/// <param name="Weight">The sum of weights.</param>
/// <param name="Count">m.</param>
internal sealed record LineFit(double Slope, double Intercept, double Variance, double Sxx, double MeanX, double Weight, int Count)
{
    public static LineFit Of(double[] places, double[] heights, double[] weights)
    {
        var (weight, x, y) = (0d, 0d, 0d);
        for (var i = 0; i < places.Length; i++)
            (weight, x, y) = (weight + weights[i], x + weights[i] * places[i], y + weights[i] * heights[i]);
        (x, y) = (x / weight, y / weight);
        var (sxx, sxy) = (0d, 0d);
        for (var i = 0; i < places.Length; i++)
            (sxx, sxy) = (sxx + weights[i] * (places[i] - x) * (places[i] - x), sxy + weights[i] * (places[i] - x) * (heights[i] - y));
        var (slope, squares) = (sxy / sxx, 0d);
        for (var i = 0; i < places.Length; i++)
        {
            var off = heights[i] - y - slope * (places[i] - x);
            squares += weights[i] * off * off;
        }

        return new LineFit(slope, y - slope * x, squares / (places.Length - 2), sxx, x, weight, places.Length);
    }
}
