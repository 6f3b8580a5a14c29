using Xunit;
using static PriceFloor.Pricing.Tests.Explaining.WorkingsInWords;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>The workings of a chain of hands and of discounts, in words.</summary>
public sealed class MarkupWordsTests
{
    [Fact]
    public void A_chain_in_words_forward_and_back()
    {
        // 50.00 doubled is 100.00; with a margin of 0.2 it is 125.00, and 1.2 times that 150.00, which with 20 % tax in it is 180.00.
        ChainStep[] steps = [new() { Name = "dealer", Markup = 1 }, new() { Margin = 0.2m }, new() { Name = "shop", Multiple = 1.2m }];
        var included = new SalesTax { Rate = 0.2m, Included = true };
        Says(
            """
            cost: what the first hand pays = 50
            price1: what hand 1 (dealer) asks, before tax = cost * (1 + 1)
            price2: what hand 2 asks, before tax = price1 / (1 - 0.2)
            price3: what hand 3 (shop) asks, before tax = price2 * 1.2
            profit1: profit of hand 1 (dealer) = price1 - cost
            markup1: profit over cost of hand 1 (dealer) = profit1 / cost
            margin1: profit over price of hand 1 (dealer) = profit1 / price1
            profit2: profit of hand 2 = price2 - price1
            markup2: profit over cost of hand 2 = profit2 / price1
            margin2: profit over price of hand 2 = profit2 / price2
            profit3: profit of hand 3 (shop) = price3 - price2
            markup3: profit over cost of hand 3 (shop) = profit3 / price2
            margin3: profit over price of hand 3 (shop) = profit3 / price3
            price: what the last hand asks, before tax = price3
            profit: profit of the whole way = price - cost
            markup: profit over cost of the whole way = profit / cost
            margin: profit over price of the whole way = profit / price
            priceWithTax: what the buyer pays, tax included = price * (1 + 0.2)
            """,
            Workings.Of(new MarkupValues(50, null, null, null, null), included, steps));
        Says(
            """
            price: what the last hand asks, before tax = 180 / (1 + 0.2)
            price3: the same, of hand 3 (shop) = price
            price2: what hand 2 asks, which hand 3 pays = price3 / 1.2
            price1: what hand 1 (dealer) asks, which hand 2 pays = price2 * (1 - 0.2)
            cost: what the first hand pays = price1 / (1 + 1)
            """,
            Workings.Of(new MarkupValues(null, 180, null, null, null), included, steps).Take(5));
    }

    [Fact]
    public void Discounts_start_from_what_was_given()
    {
        // 140 less 20 % less 15 % is 95.20.
        var series = new DiscountSeries([0.2m, 0.15m]);
        string[] both = ["factor = (1 - 0.2) * (1 - 0.15)", "single = 1 - factor"];
        Assert.Equal([.. both, "list = 140", "net = list * factor", "discount = list - net"],
            Workings.Of(series, series.FromList(140), fromNet: false).Select(line => $"{line.Symbol} = {line.Formula}"));
        Assert.Equal([.. both, "net = 95.2", "list = net / factor", "discount = list - net"],
            Workings.Of(series, series.FromNet(95.2m).Value, fromNet: true).Select(line => $"{line.Symbol} = {line.Formula}"));
    }
}
