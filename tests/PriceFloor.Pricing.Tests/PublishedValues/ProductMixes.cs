using PriceFloor.Pricing.Tests.Planning.Solver;
using Xunit;
using static PriceFloor.Pricing.Tests.Planning.Solver.Lines;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>Product mixes from textbooks whose best plans are whole. One of their limits stands for the hours.</summary>
public sealed class ProductMixes
{
    /// <summary>
    /// Hillier and Lieberman, Wyndor Glass (data seen in stored text, optimum from memory): 3x + 5y; x &lt;= 4, 2y &lt;=
    /// 12, 3x + 2y &lt;= 18: 2 and 6 leave 36.
    /// </summary>
    [Fact]
    public void Wyndor_Glass()
    {
        var best = BestMix.Of(Most(18, Line(3, 3, null, 0, 1, 0), Line(5, 2, null, 0, 0, 2)).Within(4, 12)).Value;
        Assert.Equal([2m, 6m], best.Units);
        Assert.Equal((36m, true), (best.Contribution, best.Proven));
    }

    /// <summary>The same data with unit profits of 30 and 50 (data seen in stored text; 360 computed by vertex enumeration).</summary>
    [Fact]
    public void Wyndor_Glass_in_tens()
    {
        var best = BestMix.Of(Most(18, Line(30, 3, null, 0, 1, 0), Line(50, 2, null, 0, 0, 2)).Within(4, 12)).Value;
        Assert.Equal([2m, 6m], best.Units);
        Assert.Equal(360m, best.Contribution);
    }

    /// <summary>
    /// Managerial-accounting text (Schaller, parts X and Y; seen in stored text): 300 and 600 for 1 and 3 of 120 hours,
    /// demand 60 and 100: 60 and 20, 30,000.
    /// </summary>
    [Fact]
    public void Parts_X_and_Y()
    {
        var best = BestMix.Of(Most(120, Line(300, 1, 60), Line(600, 3, 100))).Value;
        Assert.Equal([60m, 20m], best.Units);
        Assert.Equal((30_000m, 120m), (best.Contribution, best.Hours));
        // A third hour more makes one more Y; one or two alone are better spent on nothing: 600 for 3 is 200 for each, but only whole.
        Assert.Equal(0m, best.Uses[0].WorthOfOneMore);
    }

    /// <summary>
    /// ACCA PM workbook p. 90 (seen in stored text): A, B, C leave 6, 5, 4 in 1.2, 0.8, 0.4 hours: 5, 6.25 and 10 an hour, rank C, B, A; all of them
    /// take 12,000 labour and 196,000 machine hours.
    /// </summary>
    [Fact]
    public void Labour_goes_to_C_then_B_then_A()
    {
        MixBestOf(2_400, 0, 0, 6000);                 // 6,000 x 0.4 = 2,400
        MixBestOf(4_000, 0, 2000, 6000);              // and 2,000 x 0.8 = 1,600
        MixBestOf(7_200, 0, 6000, 6000);              // and 6,000 x 0.8 = 4,800
        MixBestOf(8_400, 1000, 6000, 6000);           // and 1,000 x 1.2 = 1,200
        var all = MixBestOf(20_000, 4000, 6000, 6000);
        Assert.Equal((12_000m, 196_000m), (all.Hours, all.Uses[1].Used));
    }

    /// <summary>
    /// Slides "Optimal use of limited resources" (seen in stored text): a plain piece leaves 4 and three are made an hour, a fancy one 9 and one is:
    /// 12 against 9 an hour, so the plain come first.
    /// </summary>
    [Fact]
    public void Plain_pieces_before_fancy_ones()
    {
        // 30 plain take 10 hours; the other 5 make fancy ones.
        var best = BestMix.Of(Most(15, Line(9, 1), Line(4, 1m / 3, 30))).Value;
        Assert.Equal([5m, 30m], best.Units);
        Assert.Equal((165m, 9m), (best.Contribution, best.Uses[0].WorthOfOneMore));
    }

    /// <summary>The same slides (seen in stored text): hardening leaves 75 in 3 hours, 25 an hour.</summary>
    [Fact]
    public void Hardening_leaves_25_an_hour()
    {
        var best = BestMix.Of(Most(300, Line(75, 3))).Value;
        Assert.Equal(25m, best.Contribution / best.Hours);
    }

    /// <summary>
    /// Questions and answers beside them (seen in stored text): X, Y, Z leave 12, 10, 6 in 6, 2, 1 hours: 2, 5 and 6 an hour, rank Z, Y, X.
    /// </summary>
    [Theory]
    [InlineData(20, 0, 0, 20)]
    [InlineData(60, 0, 20, 20)]
    [InlineData(120, 10, 20, 20)]
    public void Hours_go_to_Z_then_Y_then_X(int hours, int x, int y, int z) =>
        Assert.Equal([x, y, (decimal)z], BestMix.Of(Most(hours, Line(12, 6, 20), Line(10, 2, 20), Line(6, 1, 20))).Value.Units);

    private static BestMix MixBestOf(decimal labour, params decimal[] expected)
    {
        var best =
            BestMix.Of(Most(labour, Line(6, 1.2m, 4000, 0, 10), Line(5, 0.8m, 6000, 0, 12), Line(4, 0.4m, 6000, 0, 14)).Within(1_000_000)).Value;
        Assert.Equal(expected, best.Units);
        return best;
    }
}
