using Xunit;
using static PriceFloor.Pricing.Tests.Planning.Solver.Lines;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

public sealed class BestMixTests
{
    [Fact]
    public void Scarce_hours_go_to_the_lines_that_leave_most_an_hour()
    {
        // Cups leave 20 / 0.5 = 40 an hour, bowls 60 / 2 = 30, vases 90 / 4 = 22.50. 10 cups (5 h, 200) and 2 bowls (4 h, 120) fill 9 hours.
        // A tenth hour would be filled by 8 cups (4 h, 160) and 3 bowls (6 h, 180): 340, 20 more.
        var best = BestMix.Of(Most(9, Line(60, 2), Line(20, 0.5m, most: 10), Line(90, 4))).Value;
        Assert.Equal([2m, 10m, 0m], best.Units);
        Assert.Equal((320m, 9m, true), (best.Contribution, best.Hours, best.Proven));
        Assert.Equal([new ConstraintUsage("hours", 9, 9, true, 340, 20)], best.Uses);
        Assert.Null(best.AtMost);
    }

    [Fact]
    public void Whole_pieces_are_not_the_broken_ones_rounded()
    {
        // 30 for 4 h beats 20 for 3 h by the hour, and 2.5 of it would leave 75. Of whole ones two leave 60 in 8
        // hours; one and two of the other 70 in 10.
        var best = BestMix.Of(Most(10, Line(30, 4), Line(20, 3))).Value;
        Assert.Equal([1m, 2m], best.Units);
        Assert.Equal(70m, best.Contribution);
    }

    [Fact]
    public void The_kiln_may_be_scarcer_than_the_hours()
    {
        // A quarter load each: 8 pieces in 2 loads, taken by the dearer line although the other leaves more an hour (25 against 20).
        // A third load holds four more of the dearer, 160 more: 12 pieces of 2 hours are the 24 there are, so hours would bind next.
        var best = BestMix.Of(Most(24, Line(40, 2, null, 0, 0.25m), Line(25, 1, null, 0, 0.25m)).Within(2)).Value;
        Assert.Equal([8m, 0m], best.Units);
        Assert.Equal([new ConstraintUsage("hours", 16, 24, false, 320, 0), new ConstraintUsage("kiln", 2, 2, true, 480, 160)], best.Uses);
    }

    [Fact]
    public void A_limit_that_alone_stands_in_the_way_binds_even_where_one_more_is_worth_nothing()
    {
        // A load holds 0.4 pieces: 2 loads none, 3 loads one. The hours would do for more.
        var best = BestMix.Of(Most(10, Line(50, 1, null, 0, 2.5m)).Within(1)).Value;
        Assert.Equal([0m], best.Units);
        Assert.Equal([new ConstraintUsage("hours", 0, 10, false, 0, 0), new ConstraintUsage("kiln", 0, 1, true, 0, 0)], best.Uses);
    }

    [Fact]
    public void Hours_that_alone_stand_in_the_way_bind_even_where_one_more_is_worth_nothing() =>
        // A piece takes 2.5 hours: 3 hold one, 4 hold one.
        Assert.Equal([new ConstraintUsage("hours", 2.5m, 3, true, 50, 0)], BestMix.Of(Most(3, Line(50, 2.5m))).Value.Uses);

    [Fact]
    public void What_keeps_out_only_pieces_that_would_not_be_made_does_not_bind()
    {
        // The market takes one, which fills the kiln; the other line leaves nothing and would not fit either.
        var best = BestMix.Of(Most(10, Line(50, 1, 1, 0, 1), Line(0, 1, null, 0, 2)).Within(1)).Value;
        Assert.Equal([1m, 0m], best.Units);
        Assert.Equal([new ConstraintUsage("hours", 1, 10, false, 50, 0), new ConstraintUsage("kiln", 1, 1, false, 50, 0)], best.Uses);
    }

    [Fact]
    public void For_the_fewest_hours_a_limit_binds_that_keeps_out_more_an_hour_than_some_piece_that_is_made()
    {
        // 40 in 1 h, once, and 40 in 2 h carry 80 in 3 h. 15 in half an hour (30 an hour, against 40 and 20) lacks half a load. With a load more
        // there is one of them: 55 in 1.5 h, and still it takes another 2 h to carry 80.
        var best = BestMix.Of(Fewest(80, 10, Line(40, 1, 1, 0, 0), Line(40, 2, null, 0, 0), Line(15, 0.5m, null, 0, 1)).Within(0.5m)).Value;
        Assert.Equal([1m, 1m, 0m], best.Units);
        Assert.Equal([new ConstraintUsage("hours", 3, 10, false, 3, 0), new ConstraintUsage("kiln", 0, 0.5m, true, 3, 0)], best.Uses);
    }

    [Theory]
    [InlineData(10)] // half as much an hour as what is made, though more than the 5 an hour that nobody makes
    [InlineData(20)] // just as much
    public void For_the_fewest_hours_nothing_binds_that_keeps_out_no_more_an_hour(int anHour)
    {
        // 20 an hour carry 40 in 2 h; the line that lacks half a load leaves no more.
        var best = BestMix.Of(Fewest(40, 10, Line(20, 1, null, 0, 0), Line(5, 1, null, 0, 0), Line(anHour * 2, 2, null, 0, 1)).Within(0.5m)).Value;
        Assert.Equal([2m, 0m, 0m], best.Units);
        Assert.Equal(new ConstraintUsage("kiln", 0, 0.5m, false, 2, 0), best.Uses[1]);
    }

    [Fact]
    public void Hours_never_bind_the_fewest_hours() =>
        // 60 in 3 h bring the required contribution. 90 in 3.5 h would leave more an hour and do not fit beside them, but take longer alone.
        Assert.Equal([new ConstraintUsage("hours", 3, 4, false, 3, 0)], BestMix.Of(Fewest(60, 4, Line(60, 3), Line(90, 3.5m))).Value.Uses);

    [Fact]
    public void Of_equally_good_mixes_the_one_of_fewer_hours_is_taken() =>
        Assert.Equal([0m, 1m], BestMix.Of(Most(2, Line(10, 2, most: 1), Line(10, 1, most: 1)).Within()).Value.Units);

    [Fact]
    public void Of_mixes_that_take_the_same_hours_the_earlier_line_is_given_more()
    {
        // Any three pieces leave 30 in 3 hours.
        Assert.Equal([2m, 1m, 0m], BestMix.Of(Most(3, Line(10, 1, most: 2), Line(10, 1), Line(10, 1))).Value.Units);
        // 5 and 5 in one hour each, or 10 in two hours: all leave 20 in 4 hours, so the first line takes all it can.
        Assert.Equal([2m, 0m], BestMix.Of(Most(4, Line(10, 2), Line(5, 1))).Value.Units);
        Assert.Equal([4m, 0m], BestMix.Of(Most(4, Line(5, 1), Line(10, 2))).Value.Units);
    }

    [Fact]
    public void Lines_that_leave_nothing_keep_to_their_minimum()
    {
        // Two pieces at a loss of 5 are promised: 3 hours of 5 are left for 3 pieces of 20: 60 - 10.
        var best = BestMix.Of(Most(5, Line(-5, 1, least: 2), Line(0, 1), Line(20, 1))).Value;
        Assert.Equal([2m, 0m, 3m], best.Units);
        Assert.Equal(50m, best.Contribution);
    }

    [Fact]
    public void The_fewest_hours_carry_the_pool()
    {
        // 30 an hour for 2 pieces, then 20 an hour: 60 + 2 x 20 = 100 in 4 hours. With 90 asked three pieces leave 80, so it is four as well.
        foreach (var required in new[] { 100m, 90m })
        {
            var best = BestMix.Of(Fewest(required, 10, Line(20, 1), Line(30, 1, most: 2))).Value;
            Assert.Equal([2m, 2m], best.Units);
            Assert.Equal((100m, 4m, true), (best.Contribution, best.Hours, best.Proven));
            Assert.Equal([new ConstraintUsage("hours", 4, 10, false, 4, 0)], best.Uses);
        }
    }

    [Fact]
    public void One_more_load_saves_hours()
    {
        // 60 in 1 hour takes a load, 60 in 3 hours takes none. 180 required with one load: 1 + 3 + 3 = 7 hours; with two: 1 + 1 + 3 = 5.
        var best = BestMix.Of(Fewest(180, 20, Line(60, 1, null, 0, 1), Line(60, 3, null, 0, 0)).Within(1)).Value;
        Assert.Equal([1m, 2m], best.Units);
        Assert.Equal(new ConstraintUsage("kiln", 1, 1, true, 5, 2), best.Uses[1]);
    }

    [Fact]
    public void Between_mixes_of_equal_hours_the_one_that_leaves_more_is_taken() =>
        Assert.Equal([0m, 2m], BestMix.Of(Fewest(30, 10, Line(15, 1), Line(20, 1))).Value.Units);

    [Fact]
    public void A_year_without_lines_makes_nothing()
    {
        Assert.Empty(BestMix.Of(Most(10)).Value.Units);
        Assert.Equal(0m, BestMix.Of(Fewest(0, 10)).Value.Hours);
        Assert.Equal("infeasible", Assert.Single(BestMix.Of(Fewest(1, 10)).Faults).Code);
    }
}
