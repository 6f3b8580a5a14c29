using System.Globalization;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class PriceGridTests
{
    [Theory]
    [InlineData("USD", "0.01")]
    [InlineData("JPY", "1")]
    [InlineData("KWD", "0.001")]
    [InlineData("CLF", "0.0001")]
    public void A_channel_that_says_nothing_allows_every_coin(string currency, string step) =>
        Assert.Equal(new PriceGrid(Number(step), 0), PriceGrid.Of(new Channel { Sells = Sells.Retail, Currency = currency }));

    [Fact]
    public void A_channel_says_its_step_and_its_ending() =>
        Assert.Equal(new PriceGrid(5, 4.95m),
            PriceGrid.Of(new Channel { Sells = Sells.Retail, Currency = "USD", PriceStep = 5, PriceEnding = 4.95m }));

    [Theory]
    [InlineData("0.95", true)] // k = 0
    [InlineData("1.95", true)]
    [InlineData("1.950", true)]
    [InlineData("1.94", false)]
    [InlineData("1.00", false)]
    [InlineData("0", false)] // a price is above zero
    [InlineData("-0.05", false)] // no price below zero, though a whole step below the ending
    public void Steps_of_one_that_end_in_95(string price, bool allowed) => Assert.Equal(allowed, new PriceGrid(1, 0.95m).Allows(Number(price)));

    [Fact]
    public void Without_an_ending_the_first_price_is_one_step()
    {
        Assert.False(new PriceGrid(2.5m, 0).Allows(0));
        Assert.Equal(2.5m, new PriceGrid(2.5m, 0).First(0, _ => true));
        Assert.Equal(0.95m, new PriceGrid(1, 0.95m).First(0, _ => true));
    }

    [Theory]
    [InlineData("0")] // far too low a guess
    [InlineData("12")]
    [InlineData("12.5")]
    [InlineData("20")] // too high a guess
    public void The_first_that_is_enough_is_found_from_either_side(string guess)
    {
        var near = Number(guess);
        Assert.Equal(12.95m, new PriceGrid(1, 0.95m).First(near, price => price >= 12.5m));
        Assert.Equal(12m, new PriceGrid(0.5m, 0).First(near, price => price >= 11.51m));
    }

    [Fact]
    public void A_price_may_be_ten_to_the_twelfth_and_no_more()
    {
        Assert.Equal(1_000_000_000_000m, new PriceGrid(1, 0).First(1_000_000_000_000m, price => price >= 1_000_000_000_000m));
        Assert.Null(new PriceGrid(1, 0).First(1_000_000_000_000m, price => price > 1_000_000_000_000m));
        Assert.Null(new PriceGrid(1, 0.95m).First(1_000_000_000_000m, price => price >= 1_000_000_000_000m)); // 999,999,999,999.95 is the last
    }

    [Theory]
    [InlineData("69.00", "68.95")]
    [InlineData("68.95", "68.95")]
    [InlineData("68.94", "67.95")]
    [InlineData("0.95", "0.95")]
    [InlineData("0.94", null)]
    public void The_last_that_is_not_above_it(string most, string? price) =>
        Assert.Equal(price, $"{new PriceGrid(1, 0.95m).Last(Number(most))}" is { Length: > 0 } last ? last : null);

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
