using Xunit;
using static PriceFloor.Pricing.Tests.Planning.Solver.Lines;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>Thirds and other quotients that decimal cannot hold: the rounding error must neither keep a piece out nor let one in.</summary>
public sealed class InexactMixes
{
    [Theory]
    [InlineData(3)]
    [InlineData(7)]
    [InlineData(600)]
    [InlineData(998)]
    public void As_many_pieces_as_an_hour_has_parts_fit_into_it(int parts)
    {
        Assert.Equal([(decimal)parts], BestMix.Of(Most(1, Line(30, 1m / parts))).Value.Units);
        Assert.Equal([parts - 1m], BestMix.Of(Most(1 - 0.000001m, Line(30, 1m / parts))).Value.Units);
        Assert.Equal([2m * parts], BestMix.Of(Most(3000, Line(30, 1, null, 0, 2m / parts)).Within(4)).Value.Units);
    }

    [Fact]
    public void One_piece_fits_into_a_third_of_an_hour()
    {
        Assert.Equal([1m], BestMix.Of(Most(1m / 3, Line(30, 1m / 3, least: 1))).Value.Units);
        Assert.Equal([2m], BestMix.Of(Most(2m / 3, Line(30, 1m / 3))).Value.Units);
    }

    [Fact]
    public void A_pool_is_carried_by_its_three_thirds()
    {
        // 100 / 3 each: three are 99.999... and carry 100; a millionth more takes a fourth.
        Assert.Equal([3m], BestMix.Of(Fewest(100, 10, Line(100m / 3, 1))).Value.Units);
        Assert.Equal([4m], BestMix.Of(Fewest(100.000001m, 10, Line(100m / 3, 1))).Value.Units);
    }

    [Fact]
    public void Three_thirds_leave_as_much_as_a_whole_so_fewer_hours_decide()
    {
        // Three pieces of 10/3 in 1 hour each, or one of 10: in 3 hours they leave the same; in 2.9 the single one is the shorter.
        Assert.Equal([3m, 0m], BestMix.Of(Most(3, Line(10m / 3, 1, most: 3), Line(10, 3, most: 1))).Value.Units);
        Assert.Equal([0m, 1m], BestMix.Of(Most(3, Line(10m / 3, 1, most: 3), Line(10, 2.9m, most: 1))).Value.Units);
    }

    [Fact]
    public void A_years_pieces_of_a_lossy_step_fill_the_years_hours()
    {
        // 41 minutes for each piece started, 93 of 100 survive: 41 / 60 / 0.93 h each; 930 of them take 41 x 1000 / 60 hours.
        var each = 41m / 60 / 0.93m;
        var best = BestMix.Of(Most(41_000m / 60, Line(35, each, most: 2000))).Value;
        Assert.Equal([930m], best.Units);
        Assert.Equal(35m, best.Uses[0].WorthOfOneMore);   // one more hour: 1.36 pieces
    }
}
