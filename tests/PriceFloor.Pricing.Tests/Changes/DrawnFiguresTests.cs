using Xunit;

namespace PriceFloor.Pricing.Tests.Changes;

public sealed class DrawnFiguresTests
{
    [Theory]
    [InlineData("0.1", 1)]
    [InlineData("0.25", 1)]
    [InlineData("0.26", 2)]
    [InlineData("0.5", 2)]
    [InlineData("0.51", 3)]
    [InlineData("0.9", 4)]
    [InlineData("1", 4)]
    public void A_share_of_the_draws_does_not_pass_it(string share, int figure) => Assert.Equal(figure,
        new DrawnFigure([3, 1, 4, 2]).At(decimal.Parse(share, System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>0.9 x 1,000 is 900 to the last digit, and the 900th smallest is meant, not the 901st.</summary>
    [Fact]
    public void A_share_that_divides_the_draws_is_not_rounded_past_them() =>
        Assert.Equal(900, new DrawnFigure(Enumerable.Range(1, 1000).Select(one => (decimal)one)).At(1m / 10 * 9));

    [Fact]
    public void The_dust_of_divisions_is_settled_before_anything_is_added_up() =>
        Assert.Equal([1m, 0.333333333333m], new DrawnFigure([1m / 3 * 3, 1m / 3]).Values);

    /// <summary>Blocks of 1, 1, 1, 1, 0, 0, 0, 0 of one draw each: mean 0.5, 8 x 0.25 = 2, and the root of 2/56 is 0.189.</summary>
    [Fact]
    public void An_event_has_its_share_and_the_standard_error_of_eight_blocks()
    {
        var half = new DrawnEvent();
        for (var draw = 0; draw < 8; draw++)
            half.Count(draw, draw < 4);
        Assert.Equal((0.5m, 0.189m), (half.Share, Rounding.Nearest(half.StandardError, 3)));

        var even = new DrawnEvent();
        for (var draw = 0; draw < 1024; draw++)
            even.Count(draw, draw / 8 % 4 == 0); // 32 of the 128 draws of every block
        Assert.Equal((0.25m, 0m), (even.Share, even.StandardError));
    }

    [Fact]
    public void A_figure_that_is_always_the_same_has_no_shares() =>
        Assert.Null(Even(1).ShareOf(new DrawnFigure(Enumerable.Repeat(56.41m / 3, 1024))));

    [Fact]
    public void A_number_that_moves_everything_has_the_whole_share_and_one_that_moves_nothing_has_none()
    {
        var hypercube = LatinHypercube.Of(["moves", "moves nothing"], 4096);
        var figure = new DrawnFigure(Enumerable.Range(0, 4096).Select(draw => 1000 * hypercube.ProbabilityOf(0, draw)));
        Assert.InRange(DrawnGroups.Of(hypercube, 0, Enumerable.Range(0, 4096)).ShareOf(figure)!.Value, 0.998m, 1);
        Assert.InRange(DrawnGroups.Of(hypercube, 1, Enumerable.Range(0, 4096)).ShareOf(figure)!.Value, -0.01m, 0.01m);
    }

    /// <summary>Figures of 10^20 have squares that no decimal holds; their shares are those of the same figures in another unit.</summary>
    [Fact]
    public void A_share_has_no_unit()
    {
        var hypercube = LatinHypercube.Of(["a", "b"], 1024);
        decimal Share(decimal unit) => DrawnGroups.Of(hypercube, 0, Enumerable.Range(0, 1024)).ShareOf(new DrawnFigure(Enumerable.Range(0, 1024)
            .Select(draw => unit * (2 * hypercube.ProbabilityOf(0, draw) + hypercube.ProbabilityOf(1, draw)))))!.Value;
        Assert.Equal(Rounding.Settle(Share(1)), Rounding.Settle(Share(100_000_000_000_000_000_000m)));
        Assert.InRange(Share(1), 0.77m, 0.83m); // 4 of 4 + 1
    }

    /// <summary>
    /// A gain of A + B, A 3 or -3 and B 1 or -1, all four equally often: its mean is 0. Who knows both takes 4 and 2 of 4, 2, -2, -4: 1.5. Who
    /// knows A takes a mean of 3 half the time: 1.5. Who knows B takes a mean of 1 half the time: 0.5.
    /// </summary>
    [Fact]
    public void Knowing_is_worth_what_the_four_cases_say()
    {
        var gain = new DrawnFigure(Enumerable.Range(0, 1024).Select(draw => (draw / 32 < 16 ? -3m : 3) + (draw % 32 < 16 ? -1 : 1)));
        Assert.Equal(1.5m, DrawnGroups.WorthOfKnowingAll(gain));
        Assert.Equal(1.5m, Even(32).WorthOfKnowing(gain));
        Assert.Equal(0.5m, Even(1).WorthOfKnowing(gain));
    }

    /// <summary>
    /// Stevenson, Operations Management, chapter 5S: doing nothing pays 50 or 60, expanding 20 or 80, with 30 and 70 %. The best is expected to
    /// pay 62, under certainty 71, so perfect information is worth 9. (The table of payoffs is from memory; it gives the printed 62, 71 and 9.)
    /// </summary>
    [Fact]
    public void Perfect_information_is_worth_what_the_textbook_says()
    {
        var gain = new DrawnFigure(Enumerable.Range(0, 10).Select(draw => draw < 3 ? 20m - 50 : 80 - 60));
        Assert.Equal(9, DrawnGroups.WorthOfKnowingAll(gain));
        Assert.Equal(62, 0.3m * 50 + 0.7m * 60 + gain.Mean);
    }

    [Fact]
    public void What_changes_no_decision_is_worth_nothing()
    {
        var gain = new DrawnFigure(Enumerable.Range(0, 1024).Select(draw => 100m + draw % 7));
        Assert.Equal((0m, 0m), (DrawnGroups.WorthOfKnowingAll(gain), Even(1).WorthOfKnowing(gain)));
    }

    /// <summary>32 groups of 1,024 draws: by their place in steps of so many draws.</summary>
    private static DrawnGroups Even(int step) => new(Enumerable.Range(0, 1024).Select(draw => draw / step % 32));
}
