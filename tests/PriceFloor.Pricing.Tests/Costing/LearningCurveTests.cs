using Xunit;

namespace PriceFloor.Pricing.Tests.Costing;

public sealed class LearningCurveTests
{
    private static readonly int[] s_doublings = [1, 2, 4, 8, 16];
    private static readonly int[] s_runs = [2, 4, 8, 16, 30];

    [Fact]
    public void Twice_as_many_take_the_rate()
    {
        // 120 min at 85 %: 102, 86.70, 73.695, 62.64075 with each doubling.
        var curve = new LearningCurve(new Learning { Rate = 0.85m });
        Assert.Equal([120m, 102, 86.7m, 73.695m, 62.64075m], s_doublings.Select(k => 120 * curve.FactorOf(k)));
        Assert.Equal(-0.234465253637m, curve.Exponent); // worked example of the model
        Assert.Equal(54.0565m, Rounding.Nearest(120 * curve.FactorOf(30), 4)); // worked example of the model
        Assert.Equal([222m, 401.4498m, 712.3014m, 1245.9675m, 2050.8790m],
            s_runs.Select(n => Rounding.Nearest(120 * curve.SumTo(n), 4)));
    }

    [Fact]
    public void The_last_piece_counts_by_its_fraction()
    {
        // 1 + 0.85 + half of what the third takes.
        var curve = new LearningCurve(new Learning { Rate = 0.85m });
        Assert.Equal(1.85m + 0.5m * curve.FactorOf(3), curve.SumTo(2.5m));
        Assert.Equal(0.25m, curve.SumTo(0.25m));
    }

    [Fact]
    public void With_pieces_made_before_the_minutes_are_those_of_the_last_one_made()
    {
        // After 10, the 20th takes 80 % of the 10th: it is the tenth of this run.
        var curve = new LearningCurve(new Learning { Rate = 0.8m, MadeBefore = 10 });
        Assert.Equal(0.8m, curve.FactorOf(10));
        Assert.True(curve.FactorOf(1) < 1);
        Assert.Equal(1m, new LearningCurve(new Learning { Rate = 0.8m }).FactorOf(1));
        Assert.Equal(0.8m, new LearningCurve(new Learning { Rate = 0.8m, MadeBefore = 1 }).FactorOf(1)); // the second
    }

    [Fact]
    public void At_a_rate_of_one_nothing_is_learned() =>
        Assert.Equal(34.4828m, new LearningCurve(new Learning { Rate = 1, MadeBefore = 7 }).SumTo(34.4828m));

    [Fact]
    public void Without_a_rate_nothing_is_learned_and_with_one_none_were_made_before_unless_it_is_said()
    {
        Assert.Equal(7m, new LearningCurve(new Learning { MadeBefore = 7 }).SumTo(7));
        Assert.Equal((null, 0m, 7m),
            (new Learning().MadeBefore, new Learning { Rate = 0.8m }.MadeBefore, new Learning { MadeBefore = 7 }.MadeBefore));
    }
}
