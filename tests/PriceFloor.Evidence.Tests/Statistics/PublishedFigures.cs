using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>Figures that others have published, with their sources.</summary>
public sealed class PublishedFigures
{
    /// <summary>Bayes Rules!, chapter 5: Gamma(10, 2) and 6, 2, 2, 1 calls give Gamma(21, 6); its quantiles by R.</summary>
    [Theory]
    [InlineData(0.05, 2.345337)]
    [InlineData(0.5, 3.444604)]
    [InlineData(0.95, 4.843670)]
    public void Calls_after_four_hours(double share, double quantile) => Assert.Equal(quantile, Quantiles.Gamma(21, 6, share), 6);

    /// <summary>The same, with 11 in 4: (10 + 11)/(2 + 4) = 3.5.</summary>
    [Fact]
    public void Its_mean_and_ends() =>
        Assert.Equal(new Estimate(3.5000m, 2.3453m, 4.8437m), new RatePrior(10, 2).At(new Sales(11, 4), 0.9m));

    /// <summary>A compendium's page 11, nothing known before: 20, then 24, then 23: means 20, 22, 22.33; 3 and 2 before 10 in 4: 13/6.</summary>
    [Theory]
    [InlineData(0, 0, 20, 1, "20.0000")]
    [InlineData(0, 0, 44, 2, "22.0000")]
    [InlineData(0, 0, 67, 3, "22.3333")]
    [InlineData(3, 2, 10, 4, "2.1667")]
    public void Means_after_more_was_seen(int orders, int time, int more, int longer, string mean) =>
        Assert.Equal(mean, $"{new RatePrior(orders, time).At(new Sales(more, longer), 0.9m).Value}");

    /// <summary>Garwood's exact interval of a Poisson count of 25 (GraphPad's page on it; 90 % also by R).</summary>
    [Theory]
    [InlineData(0.90, 17.38, 34.92)]
    [InlineData(0.95, 16.18, 36.90)]
    [InlineData(0.99, 14.00, 41.00)]
    public void A_count_of_25(double level, double low, double high)
    {
        Assert.Equal(low, Quantiles.Gamma(25, 1, (1 - level) / 2), 2);
        Assert.Equal(high, Quantiles.Gamma(26, 1, (1 + level) / 2), 2);
    }

    /// <summary>
    /// Loss Models, the semiparametric example: 1563, 271, 32, 7 and 2 policies with 0 to 4 claims. Mean 0.194133, a 0.031766,
    /// k = m/a 6.1113, Z = 1/(1 + k) 0.140620.
    /// </summary>
    [Fact]
    public void Claims_of_1875_policies()
    {
        int[] policies = [1563, 271, 32, 7, 2];
        var prior = RatePrior.OfShelf([.. policies.SelectMany((count, claims) => Enumerable.Repeat(new Sales(claims, 1), count))]);
        Assert.Equal(0.194133m, decimal.Round(prior.Mean, 6));
        Assert.Equal(0.031766m, decimal.Round(prior.Between, 6));
        Assert.Equal(6.1113m, decimal.Round(prior.Exposure, 4));
        Assert.Equal(0.140620m, decimal.Round(prior.OwnWeight(new Sales(0, 1)), 6));
    }

    /// <summary>NIST StRD Norris: 36 readings of ozone, certified b0, b1 and their standard errors.</summary>
    [Fact]
    public void The_line_of_Norris()
    {
        var line = LineFit.Of(s_norrisX, s_norrisY, [.. s_norrisX.Select(_ => 1d)]);
        Assert.Equal(1.00211681802045, line.Slope, 12);
        Assert.Equal(-0.262323073774029, line.Intercept, 11);
        Assert.Equal(0.429796848199937E-03, double.Sqrt(line.Variance / line.Sxx), 14);
        Assert.Equal(0.232818234301152, double.Sqrt(line.Variance * (1d / 36 + line.MeanX * line.MeanX / line.Sxx)), 12);
    }

    /// <summary>Snyder and Shen, example 4.3 (in stockpyl): what is lost 0.70, what is left 0.18, demand Poisson of 50: 56.</summary>
    [Fact]
    public void How_many_newspapers()
    {
        // A negative binomial of a very large size is as good as Poisson: p = r/(r + 50).
        Assert.Equal(56, Quantiles.NegativeBinomial(1e9, 1e9 / (1e9 + 50), 0.70 / 0.88));
    }

    /// <summary>R's <c>learningCurve</c>: the first piece takes 100; the 125th at four rates, and at .85 all 125 together 5201.085.</summary>
    [Theory]
    [InlineData(0.80, 21.13225)]
    [InlineData(0.85, 32.23647)]
    [InlineData(0.90, 48.00243)]
    [InlineData(0.95, 69.95640)]
    public void The_125th_piece(double rate, double minutes) => Assert.Equal(minutes, LearningFit.Unit(100, double.Log2(rate), 125), 5);

    [Fact]
    public void All_125_pieces_at_85_percent() =>
        Assert.Equal(5201.085, Enumerable.Range(1, 125).Sum(piece => LearningFit.Unit(100, double.Log2(0.85), piece)), 3);

    /// <summary>
    /// The same pieces as a log of single pieces: the middle of a piece is not quite its number, so the rate comes back to three digits.
    /// </summary>
    [Fact]
    public void The_curve_of_its_own_pieces_is_found_again()
    {
        var log = Enumerable.Range(1, 125).Select(piece => new LearningEntry(1, (decimal)LearningFit.Unit(100, double.Log2(0.85), piece)));
        Assert.Equal(0.850m, decimal.Round(LearningFit.Of([.. log], 0, 0.9m).Fit!.Rate.Value, 3));
    }

    private static readonly double[] s_norrisY =
    [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
        557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];

    private static readonly double[] s_norrisX =
    [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
        556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];
}
