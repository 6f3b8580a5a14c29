using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold on every channel, attacked with random ones.</summary>
public sealed class ChannelProperties
{
    private const int Tries = 200;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_higher_price_always_leaves_more(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var channel = new RandomStudio(seed.Get).Channel();
        Assert.True(Net((cents.Get + more.Get) / 100m, channel) > Net(cents.Get / 100m, channel));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_target_price_keeps_the_rule_and_the_next_lower_price_does_not(NonNegativeInt seed, PositiveInt listed)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = Of(studio.Profile(), studio.Design());
        var floor = FloorPrice.Of(piece, listed.Get % 400 / 3m).Value;
        var terms = SellingTerms.Of(studio.Channel()).Value;
        var prices = ChannelPrices.Of(floor, terms).Value;

        Assert.True(terms.Grid.Allows(prices.TargetPrice));
        Assert.Equal(Verdict.MeetsTarget, prices.Check(prices.TargetPrice).Value.Verdict);
        var lower = prices.TargetPrice - terms.Grid.Step;
        if (lower > 0)
            Assert.NotEqual(Verdict.MeetsTarget, prices.Check(lower).Value.Verdict);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_verdict_turns_at_the_floor_price_and_never_back(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var floor = FloorPrice.Of(Of(studio.Profile(), studio.Design()), null).Value;
        var prices = ChannelPrices.Of(floor, SellingTerms.Of(studio.Channel()).Value).Value;
        var step = prices.Terms.Grid.Step;
        var verdicts = Enumerable.Range(-3, 7).Select(steps => prices.FloorPrice + steps * step).Where(price => price > 0)
            .Select(price => (price, prices.Check(price).Value));
        Assert.All(verdicts, one =>
        {
            Assert.Equal(one.price >= prices.FloorPrice, one.Item2.CarriesItsShare);
            Assert.Equal(one.price < prices.FloorPrice, one.Item2.Verdict == Verdict.BelowFloor);
        });
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Whatever_a_channel_takes_more_of_never_lowers_its_floor_price(NonNegativeInt seed, PositiveInt cents)
    {
        var channel = new RandomStudio(seed.Get).Channel();
        var floor = cents.Get % 50_000 / 100m;
        Channel[] dearer =
        [
            channel with { Fees = [.. channel.Fees, new Fee { Rate = 0.03m }] },
            channel with { Fees = [.. channel.Fees, new Fee { Fixed = 0.7m }] },
            channel with { Fees = [.. channel.Fees.Select(fee => fee with { Rate = fee.Rate + 0.01m })] },
            channel with { Fees = [.. channel.Fees.Select(fee => fee with { Minimum = 2 })] },
            channel with { Fees = [.. channel.Fees.Select(fee => fee with { Maximum = null })] },
            channel with { ShopShare = channel.ShopShare + 0.05m },
            channel with { CostPerPiece = channel.CostPerPiece + 1 },
            channel with { Stall = new Stall { Cost = (channel.Stall?.Cost ?? 0) + 60, Pieces = channel.Stall?.Pieces ?? 10 } },
            channel with { Shipping = channel.Shipping with { Cost = channel.Shipping.Cost + 1 } },
            channel with { Shipping = channel.Shipping with { ReturnCost = channel.Shipping.ReturnCost + 1 } },
            channel with { Shipping = channel.Shipping with { Charged = 0 } },
            channel with { Returns = channel.Returns with { ResaleShare = channel.Returns.ResaleShare * 0.5m } },
            channel with { Returns = channel.Returns with { FeesRefunded = false } },
        ];
        var least = Price(channel, floor);
        Assert.All(dearer, one => Assert.True(Price(one, floor) >= least, $"{least} fell to {Price(one, floor)}"));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_higher_floor_never_has_a_lower_price(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var channel = new RandomStudio(seed.Get).Channel();
        Assert.True(Price(channel, (cents.Get + more.Get) / 100m) >= Price(channel, cents.Get / 100m));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Ten_times_every_amount_and_step_is_ten_times_the_floor_price(NonNegativeInt seed, PositiveInt cents)
    {
        var channel = new RandomStudio(seed.Get).Channel();
        var tenfold = channel with
        {
            Fees = [.. channel.Fees.Select(fee => fee with { Fixed = fee.Fixed * 10, Minimum = fee.Minimum * 10, Maximum = fee.Maximum * 10 })],
            Shipping = new Shipping
            {
                Charged = channel.Shipping.Charged * 10,
                Cost = channel.Shipping.Cost * 10,
                ReturnCost = channel.Shipping.ReturnCost * 10,
            },
            CostPerPiece = channel.CostPerPiece * 10,
            Stall = channel.Stall is { } stall ? stall with { Cost = stall.Cost * 10 } : null,
            PriceStep = channel.PriceStep * 10,
            PriceEnding = channel.PriceEnding * 10,
        };
        Assert.Equal(10 * Price(channel, cents.Get / 100m), Price(tenfold, cents.Get / 10m));
    }

    private static decimal Net(decimal price, Channel channel) => Sale.Of(price, channel).Net;

    private static decimal Price(Channel channel, decimal floor) => SellingTerms.Of(channel).Value.FloorPrice(floor).Value.Price;

    private static UnitCost Of(CostProfile profile, Design design) => UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value;
}
