using Xunit;

namespace PriceFloor.Pricing.Tests.ExactReckoning;

/// <summary>Every figure of the model, held against a second calculation in exact fractions, on a thousand random studios.</summary>
public sealed class ExactReckoningTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 1000)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Year_piece_and_channel_agree_with_exact_fractions(int seed)
    {
        var studio = new RandomStudio(seed);
        var profile = studio.Profile();
        var design = studio.Design();
        var year = StudioYear.Of(profile, default).Value;
        var exact = ByHand.YearOf(profile, profile.YearStart!.Value);

        Same(exact.Expenses.Nearest(2), year.Currency.Round(year.Expenses));
        Same(exact.Traced.Nearest(2), year.Currency.Round(year.Traced));
        Same(exact.Household.Nearest(2), year.Currency.Round(year.Household));
        Same(exact.Need.Nearest(2), year.Currency.Round(year.Need));
        Same(exact.Profit.Up(2), year.Currency.RoundUp(year.Profit));
        Same(ByHand.TaxOn(profile.Tax, exact.Profit).Nearest(2), year.Currency.Round(year.TaxOnProfit));
        Same(exact.Revenue.Up(2), year.Currency.RoundUp(year.RequiredRevenue));
        Same(exact.BenchMustEarn.Up(2), year.Currency.RoundUp(year.BenchMustEarn));
        Same(exact.Workdays.Nearest(4), Rounding.Nearest(year.Workdays, 4));
        Same(exact.BenchHours.Nearest(4), Rounding.Nearest(year.BenchHours, 4));
        Same(exact.CarryingHours.Nearest(4), Rounding.Nearest(year.CarryingHours, 4));
        Same(exact.PerBenchHour.Up(2), year.Currency.RoundUp(year.PerBenchHour));

        var piece = UnitCost.Of(design, year).Value;
        var one = ByHand.PieceOf(design, profile, exact);
        Same(one.Starts.Nearest(6), Rounding.Nearest(piece.Time.Starts, 6));
        Same(one.Hours.Nearest(4), Rounding.Nearest(piece.BenchHours, 4));
        Same(one.Materials.Nearest(2), year.Currency.Round(piece.Materials));
        Same(one.Seconds.Nearest(2), year.Currency.Round(piece.SecondsCredit));
        Same(one.Floor.Up(2), year.Currency.RoundUp(piece.Floor));
        Same(one.PiecesPerYear.Down(0), Rounding.Down(piece.PiecesPerYear, 0));
        Assert.Equal(one.FloorWithinLimit is not null, piece.YearlyPieces.FloorWithinLimit is not null);
        if (one.FloorWithinLimit is { } within)
            Same(within.Up(2), year.Currency.RoundUp(piece.YearlyPieces.FloorWithinLimit!.Value));

        var channel = studio.Channel();
        var floor = FloorPrice.Of(piece, null).Value;
        var prices = ChannelPrices.Of(floor, SellingTerms.Of(channel).Value).Value;
        var there = ByHand.FloorOn(channel, one, exact);
        Same(there.Hours.Nearest(4), Rounding.Nearest(prices.ChannelFloor.SellingHours, 4));
        Same(there.Floor.Up(2), year.Currency.RoundUp(prices.ChannelFloor.Floor));
        IsTheSmallest(prices.FloorPrice, channel, price => ByHand.NetOf(price, channel).Net.Settled() >= there.Floor.Settled());
        var target = one.Floor.Up(2) * profile.PriceRule.RetailMultiple;
        if (channel.Sells == Sells.Wholesale)
            Assert.Equal(prices.FloorPrice, prices.TargetPrice);
        else
            IsTheSmallest(prices.TargetPrice, channel,
                price => price >= prices.FloorPrice && ByHand.NetOf(price, channel).BeforeTax.Settled() >= target.Settled());

        var net = ByHand.NetOf(prices.TargetPrice, channel).Net;
        var check = prices.Check(prices.TargetPrice).Value;
        Same(net.Nearest(2), year.Currency.Round(check.Sale.Net));
        Same((net - there.Floor).Nearest(2), year.Currency.Round(check.AboveFloor));
        Same(((net - one.Materials + one.Seconds) / (one.Hours + there.Hours)).Nearest(2), year.Currency.Round(check.EarnedPerBenchHour));
        Assert.Equal(Verdict.MeetsTarget, check.Verdict);
    }

    private static void IsTheSmallest(decimal price, Channel channel, Func<decimal, bool> isEnough)
    {
        Assert.True(isEnough(price), $"{price} is not enough");
        Assert.Equal(0, (price - channel.PriceEnding) % channel.PriceStep!.Value);
        var lower = price - channel.PriceStep.Value;
        Assert.False(lower > 0 && isEnough(lower), $"{lower} would do already");
    }

    private static void Same(Fraction exact, decimal actual) => Assert.Equal(exact, Fraction.Of(actual));
}
