using System.Text;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.PriceChecks;

/// <summary>
/// Slow stock that is sold off at a listed price below the floor, so many pieces and until a day. The studio's first day is 2027-01-02.
/// </summary>
public sealed class ClearingTests
{
    private const string Price = "/v1/designs/RB-014/prices/web", Check = "/v1/price-checks?sku=RB-014&channel=web&price=40.00";

    private const string Clears = """{"price":40.00,"currency":"USD","clears":{"pieces":5,"until":"2027-08-31"}}""";

    [Theory]
    [InlineData("verdict")]
    [InlineData("check")]
    [InlineData("read")]
    public async Task A_check_at_any_scope_says_so_and_the_verdict_stays_as_it_is(string scope)
    {
        await using var studio = await Clearing();
        using var client = await studio.ClientFor(scope);
        Assert.Equal("below-floor False True", Told(await studio.Get(Check, client)));
        var sent = await studio.Post("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":41}""", client);
        Assert.Equal("below-floor False True", Told(sent));
        // Below the price that was listed for it, and where nothing is sold off.
        Assert.Equal("below-floor False ", Told(await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=39.99", client)));
        Assert.Equal("below-floor False ", Told(await studio.Get("/v1/price-checks?sku=RB-014&channel=other&price=40.00", client)));
    }

    [Fact]
    public async Task It_ends_after_its_last_day()
    {
        await using var studio = await Clearing();
        var stored = studio.Clock.GetUtcNow().AddSeconds(1);
        studio.Clock.Advance(new DateTimeOffset(2027, 8, 31, 23, 59, 0, TimeSpan.Zero) - studio.Clock.GetUtcNow());
        Assert.Equal("below-floor False True", Told(await studio.Get(Check)));
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal("below-floor False ", Told(await studio.Get(Check)));
        Assert.Equal("below-floor False True", Told(await studio.Get($"{Check}&asOf={stored:yyyy-MM-ddTHH:mm:ss}Z")));
    }

    [Fact]
    public async Task It_ends_when_so_many_are_in_the_log_as_sold()
    {
        await using var studio = await Clearing();
        // Two of the day before and one at another place are not of these five; nor are two that were given away.
        await studio.Sheet("source=shop", "ref,on,what,sku,channel,pieces,price\n1,2027-01-01,sold,RB-014,web,2,40.00\n"
            + "2,2027-01-03,sold,RB-014,other,1,40.00\n3,2027-01-03,given,RB-014,web,2,\n4,2027-01-02,sold,RB-014,web,4,40.00\n");
        Assert.Equal("below-floor False True", Told(await studio.Get(Check)));
        var moment = studio.Clock.GetUtcNow().AddSeconds(30);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await studio.Sheet("source=shop", "ref,on,what,sku,channel,pieces,price\n5,2027-01-04,sold,RB-014,web,1,40.00\n");
        Assert.Equal("below-floor False ", Told(await studio.Get(Check)));
        Assert.Equal("below-floor False True", Told(await studio.Get($"{Check}&asOf={moment:yyyy-MM-ddTHH:mm:ss}Z")));
        await studio.Delete("/v1/movements/shop/5");
        Assert.Equal("below-floor False True", Told(await studio.Get(Check)));
    }

    [Fact]
    public async Task A_new_price_ends_it_and_the_same_price_of_a_shop_does_not()
    {
        await using var studio = await Clearing();
        await studio.Post("/v1/listed-prices/batch", """[{"sku":"RB-014","channel":"web","price":40.00}]""");
        Assert.Equal("below-floor False True", Told(await studio.Get(Check)));
        await studio.Post("/v1/listed-prices/batch", """[{"sku":"RB-014","channel":"web","price":39.00}]""");
        Assert.Equal("below-floor False ", Told(await studio.Get(Check)));
    }

    [Fact]
    public async Task Batches_say_so_too()
    {
        await using var studio = await Clearing();
        const string Lines = """{"sku":"RB-014","channel":"web","price":40.00}""" + "\n"
            + """{"sku":"RB-014","channel":"other","price":40.00}""" + "\n";
        var json = await studio.Post("/v1/price-checks/batch", $"[{Lines.Trim().Replace("\n", ",", StringComparison.Ordinal)}]");
        Assert.Equal([true, false], json.Json.GetProperty("items").EnumerateArray().Select(item => item.TryGetProperty("clearing", out _)));
        var lines = await studio.SendBytes("POST", "/v1/price-checks/batch", Encoding.UTF8.GetBytes(Lines), "application/x-ndjson");
        Assert.Equal([true, false], lines.Text.Split('\n')[..2].Select(line => line.Contains("\"clearing\":true", StringComparison.Ordinal)));
        // A sheet keeps its columns.
        var sheet = await studio.SendBytes("POST", "/v1/price-checks/batch", "sku,channel,price\nRB-014,web,40.00\n"u8.ToArray(), "text/csv");
        Assert.DoesNotContain("clearing", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_goes_out_with_the_sheet_of_prices_and_comes_back()
    {
        await using var studio = await Clearing();
        var sheet = (await studio.Get("/v1/sheets/prices")).Text;
        Assert.Equal("sku,channel,alias,price,clearsPieces,clearsUntil\r\nRB-014,web,,40,5,2027-08-31\r\n", sheet);
        await Send(studio, sheet.Replace(",5,2027-08-31", ",3,2027-09-30", StringComparison.Ordinal));
        Assert.Equal("""{"pieces":3,"until":"2027-09-30"}""", (await studio.Get(Price)).Json.GetProperty("clears").GetRawText());
        // A sheet without these columns leaves them alone; empty cells take them away.
        await Send(studio, "sku,channel,price\nRB-014,web,41\n");
        Assert.Equal("""{"pieces":3,"until":"2027-09-30"}""", (await studio.Get(Price)).Json.GetProperty("clears").GetRawText());
        await Send(studio, "sku,channel,price,clearsPieces,clearsUntil\nRB-014,web,41,,\n");
        Assert.False((await studio.Get(Price)).Json.TryGetProperty("clears", out _));
        var half = await studio.SendBytes("PUT", "/v1/sheets/prices", "sku,channel,price,clearsPieces,clearsUntil\nRB-014,web,41,2,\n"u8.ToArray(),
            "text/csv");
        Assert.Equal(["required"], half.IsProblem(422, "invalid-input").Codes);
    }

    [Theory]
    [InlineData("""{"price":40,"clears":{"pieces":0,"until":"2027-08-31"}}""", 422, "out-of-range")]
    [InlineData("""{"price":40,"clears":{"pieces":1.5,"until":"2027-08-31"}}""", 422, "too-many-decimals")]
    [InlineData("""{"price":40,"clears":{"pieces":2}}""", 422, "required")]
    [InlineData("""{"price":40,"clears":{"pieces":2,"until":"31.8."}}""", 422, "not-a-date")]
    public async Task What_cannot_be_meant_is_refused(string body, int status, string code)
    {
        await using var studio = await Clearing();
        Assert.Equal([code], (await studio.Put(Price, body)).IsProblem(status, "invalid-input").Codes);
        Assert.Equal(5, (await studio.Get(Price)).Json.GetProperty("clears").GetProperty("pieces").GetDecimal());
    }

    [Fact]
    public async Task A_patch_takes_it_away()
    {
        await using var studio = await Clearing();
        Assert.Equal(200, (await studio.SendBytes("PATCH", Price, """{"clears":null}"""u8.ToArray(), "application/merge-patch+json")).Status);
        Assert.Equal("below-floor False ", Told(await studio.Get(Check)));
    }

    private static async Task<Studio> Clearing()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/other", """{"sells":"retail","currency":"USD"}""");
        var stored = await studio.Has(Price, Clears);
        Assert.Equal("""{"pieces":5,"until":"2027-08-31"}""", stored.Json.GetProperty("clears").GetRawText());
        return studio;
    }

    private static async Task Send(Studio studio, string sheet)
    {
        var sent = await studio.SendBytes("PUT", "/v1/sheets/prices", Encoding.UTF8.GetBytes(sheet), "text/csv");
        Assert.True(sent.Status == 200, sent.Text);
    }

    private static string Told(Answer answer) => $"{answer.Json.GetProperty("verdict")} {answer.Json.GetProperty("carriesItsShare").GetBoolean()} "
        + (answer.Json.TryGetProperty("clearing", out var clearing) ? $"{clearing.GetBoolean()}" : "");
}
