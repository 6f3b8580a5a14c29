using System.Globalization;
using Xunit;

namespace PriceFloor.Pricing.Tests.Numbers;

public sealed class CurrencyTests
{
    [Theory]
    [InlineData("JPY", "1")]
    [InlineData("USD", "0.01")]
    [InlineData("KWD", "0.001")]
    [InlineData("CLF", "0.0001")]
    public void The_smallest_coin_has_the_currencys_decimals(string code, string coin) => Assert.Equal(coin, Text(Currency.Of(code).MinorUnit));

    [Theory]
    [InlineData("USD", "34.285714", "34.29", "34.28", "34.29")]
    [InlineData("JPY", "34.285714", "35", "34", "34")]
    [InlineData("KWD", "34.285714", "34.286", "34.285", "34.286")]
    [InlineData("USD", "34.285", "34.29", "34.28", "34.29")] // half away from zero
    [InlineData("USD", "-34.285", "-34.28", "-34.29", "-34.29")]
    [InlineData("USD", "34", "34.00", "34.00", "34.00")]
    public void Money_that_must_be_there_goes_up_money_to_spend_goes_down(string code, string amount, string least, string most, string nearest)
    {
        var currency = Currency.Of(code);
        var exact = decimal.Parse(amount, CultureInfo.InvariantCulture);
        Assert.Equal((least, most, nearest), (Text(currency.RoundUp(exact)), Text(currency.RoundDown(exact)), Text(currency.Round(exact))));
    }

    [Theory]
    [InlineData("usd")] // codes are in capitals
    [InlineData("")]
    [InlineData("US")]
    [InlineData("ZZZ")]
    [InlineData("DEM")] // withdrawn
    [InlineData("XTS")] // for testing, no minor unit
    public void What_is_no_money_of_today_is_not_found(string code) => Assert.Null(Currency.Find(code));

    [Fact]
    public void Every_code_is_three_capitals_and_there_once()
    {
        var all = Currency.All.ToList();
        Assert.All(all, currency => Assert.Matches("^[A-Z]{3}$", currency.Code));
        Assert.All(all, currency => Assert.InRange(currency.Decimals, 0, 4));
        Assert.Equal(all.Count, all.Select(currency => currency.Code).Distinct().Count());
    }

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
