using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.OrderChecks;

/// <summary>The worked examples of orders, through HTTP: the web shop charges 5.00 for shipping that costs 6.20.</summary>
public sealed class OrderCheckTests(WorkedOrders worked) : IClassFixture<WorkedOrders>
{
    [Fact]
    public async Task A_weak_piece_is_carried_by_a_strong_one()
    {
        var set = await Check("""{"channel":"web","items":[{"sku":"RB-014","pieces":2},{"sku":"OR-002","pieces":1}]}""");
        // 2 * 58.00 + 44.00 = 160.00; worked example of the model: net 149.77 over floors of 132.96, so 16.81 above.
        Assert.StartsWith("""{"verdict":"meets-floor","carriesItsShare":true,"currency":"USD","total":160.00,"leastTotal":""", set.Text,
            StringComparison.Ordinal);
        Assert.Equal(("149.77", "132.96", "16.81"), (Raw(set, "netProceeds"), Raw(set, "floors"), Raw(set, "aboveFloor")));
        var parts = set.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("aboveFloor").GetDecimal()).ToList();
        Assert.Equal(16.81m, parts.Sum());
        // The pendants' part of 149.77 is 116 / 160 of it: 108.58, and two floors of 54.33 are 108.65.
        Assert.True(parts[0] < 0 && parts[1] > 0, string.Join(' ', parts));
        Assert.Equal("[]", Raw(set, "gifts"));
        Assert.Equal(["RB-014/web@1", "OR-002/web@1"],
            set.Json.GetProperty("basis").GetProperty("listedPrices").EnumerateArray().Select(one => one.GetString()));
        var free = await Check(
            """{"channel":"web","items":[{"sku":"RB-014","pieces":2},{"sku":"OR-002","pieces":1}],"offer":{"shippingCharged":0}}""");
        Assert.Equal("144.95", Raw(free, "netProceeds"));
    }

    [Fact]
    public async Task A_gift_stands_at_what_it_must_bring_in()
    {
        var order = await Check("""{"channel":"web","items":[{"sku":"PN-007","pieces":1}],"gifts":[{"sku":"OR-002","pieces":1}]}""");
        Assert.Equal(("198.80", "118.70", "80.10"), (Raw(order, "netProceeds"), Raw(order, "floors"), Raw(order, "aboveFloor")));
        var (item, gift) = (order.Json.GetProperty("items")[0].GetProperty("aboveFloor").GetDecimal(),
            order.Json.GetProperty("gifts")[0].GetProperty("aboveFloor").GetDecimal());
        Assert.True(gift < 0);
        Assert.Equal(80.10m, item + gift);
    }

    [Theory]
    [InlineData("PN-007", "0.499")]
    [InlineData("BV-004", "0.286")]
    [InlineData("RB-021", "0.118")]
    [InlineData("MB-001", "0.116")]
    [InlineData("BD-003", "0.094")]
    [InlineData("RB-014", "null")]
    public async Task So_much_may_be_taken_off_one_piece(string sku, string share) => // worked example of the model
        Assert.Equal(share, Raw(await Check($$"""{"channel":"web","items":[{"sku":"{{sku}}","pieces":1}]}"""), "mostOff"));

    [Fact]
    public async Task From_84_on_every_order_carries_free_shipping()
    {
        var answer = await Check("""{"channel":"web","items":[],"leastOrder":true,"offer":{"shippingCharged":0}}""");
        Assert.False(answer.Json.TryGetProperty("verdict", out _));
        var least = answer.Json.GetProperty("leastOrder");
        Assert.Equal(("84.00", """["RB-014"]"""), (least.GetProperty("threshold").GetRawText(), least.GetProperty("never").GetRawText()));
        var designs = least.GetProperty("designs").EnumerateArray().ToDictionary(one => one.GetProperty("sku").GetString()!,
            one => $"{one.GetProperty("pieces").GetRawText()} {one.GetProperty("total").GetRawText()}");
        Assert.Equal(["BD-003", "BD-008", "BV-004", "MB-001", "OR-002", "PN-007", "RB-014", "RB-021"], designs.Keys); // all that are listed there
        Assert.Equal(("2 48.00", "2 84.00", "1 64.00", "null null"), (designs["BD-003"], designs["MB-001"], designs["RB-021"], designs["RB-014"]));
    }

    [Fact]
    public async Task The_least_total_fed_back_carries_and_a_cent_less_does_not()
    {
        foreach (var offer in new[] { "{}", """{"discountShare":0.15}""", """{"amountOff":7.5}""", """{"shippingCharged":0}""" })
        {
            string Order(decimal price) => FormattableString.Invariant(
                $$"""{"channel":"web","items":[{"sku":"BD-003","pieces":1,"price":{{price}}}],"offer":{{offer}}}""");
            var least = (await Check(Order(90))).Json.GetProperty("leastTotal").GetDecimal();
            Assert.Equal((offer, "meets-floor"), (offer, Word(await Check(Order(least)))));
            Assert.Equal((offer, "below-floor"), (offer, Word(await Check(Order(least - 0.01m)))));
        }
    }

    [Fact]
    public async Task An_order_of_average_size_leaves_what_the_price_check_says()
    {
        // Identity: with 2 pieces an order and no usual discount, twice the check's net.
        await using var studio = new Studio();
        await studio.HasTheWorkedStudio();
        var web = (await studio.Get("/v1/channels/web")).Text.Replace("\"piecesPerOrder\":1.4", "\"piecesPerOrder\":2", StringComparison.Ordinal);
        await studio.Has("/v1/channels/web", web);
        var check = await studio.Post("/v1/price-checks?workings=true", """{"sku":"RB-021","channel":"web","price":64}""");
        var order = await studio.Post("/v1/order-checks?workings=true", """{"channel":"web","items":[{"sku":"RB-021","pieces":2}]}""");
        Assert.Equal(2 * Working(check, "net"), Working(order, "orderNet"), 10);
    }

    [Fact]
    public async Task Its_workings_end_in_its_figures()
    {
        var order = await worked.Studio.Post("/v1/order-checks?workings=true",
            """{"channel":"web","items":[{"sku":"RB-014","pieces":2},{"sku":"OR-002","pieces":1}],"gifts":[{"sku":"BD-003","pieces":1}]}""");
        Assert.Equal(order.Json.GetProperty("netProceeds").GetDecimal(), Math.Round(Working(order, "orderNet"), 2));
        Assert.Equal(order.Json.GetProperty("floors").GetDecimal(), Math.Round(Working(order, "orderFloors"), 2));
    }

    private Task<Answer> Check(string order) => worked.Studio.Post("/v1/order-checks", order);

    private static string Raw(Answer answer, string property) => answer.Json.GetProperty(property).GetRawText();

    private static string? Word(Answer answer) => answer.Json.GetProperty("verdict").GetString();

    private static decimal Working(Answer answer, string symbol) => answer.Json.GetProperty("workings").EnumerateArray()
        .Single(line => line.GetProperty("symbol").GetString() == symbol).GetProperty("value").GetDecimal();
}

/// <summary>A store with the documents of the worked examples, filled once.</summary>
public sealed class WorkedOrders : IAsyncLifetime
{
    public Studio Studio { get; } = new();

    public async ValueTask InitializeAsync() => await Studio.HasTheWorkedStudio();

    public ValueTask DisposeAsync() => Studio.DisposeAsync();
}
