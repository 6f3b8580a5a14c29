using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class QuickVerdictTests
{
    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void The_quick_verdict_is_the_reckoned_one_on_the_grid_and_off_it(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var (profile, design, channel) = (studio.Profile(), studio.Design(), studio.Channel());
        var piece = UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value;
        var prices =
            ChannelPrices.Of(FloorPrice.Of(piece, seed.Get % 3 == 0 ? piece.Floor * 1.3m : null).Value, SellingTerms.Of(channel).Value).Value;
        var step = prices.Terms.Grid.Step;
        foreach (var around in new[] { prices.FloorPrice, prices.TargetPrice, 41.37m, 0.01m })
            for (var steps = -3m; steps <= 3; steps += 0.5m)
                if (around + steps * step is > 0 and var price)
                    Assert.Equal(prices.Check(price).Value.Verdict, prices.VerdictOf(price));
    }
}
