using Xunit;

namespace PriceFloor.Pricing.Tests.Changes;

/// <summary>
/// Thirty goblets for 3,240: minutes at the torch and the share that comes out good are guesses. The worked example of the model, computed by another
/// program.
/// </summary>
public sealed class TakeOrLeaveTests
{
    private static readonly LatinHypercube s_draws = LatinHypercube.Of(["quote/minutes", "quote/good"], 4096);

    private static readonly decimal[] s_gains = [.. Enumerable.Range(0, 4096).Select(draw =>
    {
        var minutes = RangeDistribution.OneInTenBeyond(95, 120, 170).At(s_draws.ProbabilityOf(0, draw));
        var good = RangeDistribution.OneInTenBeyond(0.75m, 0.87m, 0.93m).At(s_draws.ProbabilityOf(1, draw));
        return 3240 * 0.971m - 0.30m - 30 / good * (minutes / 60 * 55.98876395746374m * 0.5696885m + 9.50m);
    })];

    [Fact]
    public void Taking_it_gains_398_90_on_average_and_loses_in_26_5_of_100_draws()
    {
        Assert.Equal(398.90m, Rounding.Nearest(new DrawnFigure(s_gains).Mean, 2));
        Assert.Equal(0.265m, Rounding.Nearest(s_gains.Count(gain => gain < 0) / 4096m, 3));
    }

    [Fact]
    public void Two_trial_pieces_may_cost_85()
    {
        var gain = new DrawnFigure(s_gains);
        decimal Worth(int number) => Rounding.Nearest(DrawnGroups.Of(s_draws, number, Enumerable.Range(0, 4096)).WorthOfKnowing(gain), 2);
        Assert.Equal((99.07m, 85.50m, 4.89m), (Rounding.Nearest(DrawnGroups.WorthOfKnowingAll(gain), 2), Worth(0), Worth(1)));
    }
}
