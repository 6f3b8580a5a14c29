using PriceFloor.Pricing.Tests.Planning.Solver;
using Xunit;
using static PriceFloor.Pricing.Tests.Planning.Solver.Lines;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>More product mixes that textbooks use, all from memory; each optimum is checked by hand beside it.</summary>
public sealed class RememberedMixes
{
    /// <summary>
    /// Winston, Operations Research, Giapetto's toys (from memory): 3x + 2y; finishing 2x + y &lt;= 100, carpentry x + y
    /// &lt;= 80, x &lt;= 40: 20 and 60, 180.
    /// </summary>
    [Fact]
    public void Giapettos_toys()
    {
        // (x + y) + (2x + y) = 3x + 2y <= 80 + 100, reached at 20 and 60. Each hour is worth 1: 81 hours make 19 and 62, 181.
        var best = BestMix.Of(Most(80, Line(3, 1, 40, 0, 2), Line(2, 1, null, 0, 1)).Within(100)).Value;
        Assert.Equal([20m, 60m], best.Units);
        Assert.Equal((180m, 1m, 1m), (best.Contribution, best.Uses[0].WorthOfOneMore, best.Uses[1].WorthOfOneMore));
    }

    /// <summary>
    /// Winston, Operations Research, Dakota Furniture (from memory): desks, tables, chairs leave 60, 30, 20; lumber 8, 6, 1 of 48; finishing 4, 2,
    /// 1.5 of 20; carpentry 2, 1.5, 0.5 of 8: 2 desks and 8 chairs, 280.
    /// </summary>
    [Fact]
    public void Dakota_Furniture()
    {
        // 10 x finishing + 10 x carpentry = 60, 35, 20 a piece, nothing below what they leave: at most 10 x 20 + 10 x 8 = 280.
        var best = BestMix.Of(Most(8, Line(60, 2, null, 0, 4, 8), Line(30, 1.5m, 5, 0, 2, 6), Line(20, 0.5m, null, 0, 1.5m, 1)).Within(20, 48)).Value;
        Assert.Equal([2m, 0m, 8m], best.Units);
        Assert.Equal(280m, best.Contribution);
        Assert.Equal([8m, 20m, 24m], best.Uses.Select(use => use.Used));
    }

    /// <summary>
    /// Anderson, Sweeney and Williams, Par Inc. (from memory): bags leave 10 and 9; cutting 7/10 and 1 of 630, sewing 1/2 and 5/6 of 600, finishing 1
    /// and 2/3 of 708, inspection 1/10 and 1/4 of 135: 540 and 252, 7,668.
    /// </summary>
    [Fact]
    public void Par_Incs_golf_bags()
    {
        // Cutting 378 + 252 = 630 and finishing 540 + 168 = 708 are full: 4.375 x 630 + 6.9375 x 708 = 2756.25 + 4911.75 = 7668.
        var problem = Most(630, Line(10, 0.7m, null, 0, 0.5m, 1), Line(9, 1, null, 0, 5m / 6, 2m / 3)).Within(600, 708);
        Activity[] bags = [problem.Activities[0] with { Loads = [0.5m, 1, 0.1m] }, problem.Activities[1] with { Loads = [5m / 6, 2m / 3, 0.25m] }];
        var best = BestMix.Of(problem with { Activities = bags, Resources = [.. problem.Resources, new Resource("inspection", 135)] }).Value;
        Assert.Equal([540m, 252m], best.Units);
        Assert.Equal(7668m, best.Contribution);
        Assert.Equal([630m, 480m, 708m, 117m], best.Uses.Select(use => Rounding.Settle(use.Used)));
    }

    /// <summary>
    /// Winston, Operations Research, Telfa (from memory): 8x + 5y; x + y &lt;= 6, 9x + 5y &lt;= 45: broken pieces would leave 41.25 (3.75 and 2.25),
    /// whole ones 40 (5 and 0), which no rounding of the former finds.
    /// </summary>
    [Fact]
    public void Telfas_tables_and_chairs()
    {
        // x = 5: y = 0, 40. x = 4: 9 hours of 5 are left, y = 1, 37. x = 3: y = 3, 39. x = 2: y = 4, 36.
        var best = BestMix.Of(Most(6, Line(8, 1, null, 0, 9), Line(5, 1, null, 0, 5)).Within(45)).Value;
        Assert.Equal([5m, 0m], best.Units);
        Assert.Equal(40m, best.Contribution);
    }

    /// <summary>
    /// Winston, Operations Research, Stockco (from memory): 16, 22, 12, 8 for 5, 7, 4, 3 of 14, each once: the last three leave 42, though the
    /// first two leave most for what they take.
    /// </summary>
    [Fact]
    public void Stockcos_four_investments()
    {
        // 7 + 4 + 3 = 14: 42. With the first: 5 + 7 = 12: 38; 5 + 4 + 3 = 12: 36.
        var best = BestMix.Of(Most(14, Line(16, 5, 1), Line(22, 7, 1), Line(12, 4, 1), Line(8, 3, 1))).Value;
        Assert.Equal([0m, 1m, 1m, 1m], best.Units);
        Assert.Equal(42m, best.Contribution);
    }
}
