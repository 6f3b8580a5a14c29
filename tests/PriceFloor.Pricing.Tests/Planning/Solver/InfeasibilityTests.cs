using Xunit;
using static PriceFloor.Pricing.Tests.Planning.Solver.Lines;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

public sealed class InfeasibilityTests
{
    [Fact]
    public void Every_limit_that_the_minimums_break_is_named()
    {
        // 3 pieces: 3 x 4.5 = 13.5 hours of 10, 3 x 0.5 = 1.5 loads of 1; 3 x 1/3 = 1 of 1 on the lathe is no fault.
        var fault = FaultOf(Most(10, Line(30, 4.5m, null, 3, 0.5m, 1m / 3)).Within(1, 1));
        Assert.Equal(new Fault("", FaultCodes.Infeasible, "The least that is to be made does not fit: it takes 13.5 bench hours where there are 10 "
            + "and 1.5 loads of \"kiln\" where there are 1. Lower a minimum, or find more of what is short."), fault);
    }

    [Fact]
    public void What_is_needed_is_rounded_up_to_four_decimals() =>
        // 2 x 2/3 = 1.33333...
        Assert.Contains("1.3334 bench hours where there are 1.25.", FaultOf(Most(1.25m, Line(30, 2m / 3, least: 2))).Detail,
            StringComparison.Ordinal);

    [Fact]
    public void A_minimum_above_the_maximum_fits_nothing() =>
        Assert.Equal("infeasible", FaultOf(Most(10, Line(30, 1, most: 1, least: 2))).Code);

    [Theory]
    [InlineData(MixGoal.MaximumSurplus)]
    [InlineData(MixGoal.FewestHours)]
    public void Hours_below_nothing_hold_no_mix_at_all(MixGoal goal) =>
        Assert.Contains("0 bench hours where there are -2", FaultOf(Most(-2, Line(30, 1)) with { Goal = goal }).Detail, StringComparison.Ordinal);

    [Fact]
    public void A_requirement_that_the_hours_cannot_earn_says_what_is_missing() =>
        // 10 hours of 30 are 300: 700.50 short.
        Assert.Equal(
            new Fault("", FaultCodes.Infeasible,
                "No mix brings the 1000.5 that bench time must recover: "
                + "the most that any leaves is 300, which is 700.5 too little. What is short: bench hours."),
            FaultOf(Fewest(1000.50m, 10, Line(30, 1))));

    [Fact]
    public void A_requirement_that_the_market_cannot_bring_says_so() =>
        Assert.EndsWith("the most that any leaves is 90, which is 10 too little. Every line that leaves something is already made as often as its "
            + "market takes it.", FaultOf(Fewest(100, 10, Line(30, 1, most: 3))).Detail, StringComparison.Ordinal);

    [Fact]
    public void A_limit_named_hours_is_not_taken_for_the_bench()
    {
        var problem = Fewest(100, 10, Line(30, 1, null, 0, 1)) with { Resources = [new Resource("hours", 2)] };
        Assert.EndsWith("What is short: loads of \"hours\".", FaultOf(problem).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_too_large_to_be_exact_are_refused() =>
        Assert.Equal("too-large", FaultOf(Most(10, Line(decimal.MaxValue, 1, least: 2))).Code);

    private static Fault FaultOf(ProductMixProblem problem) => Assert.Single(BestMix.Of(problem).Faults);
}
