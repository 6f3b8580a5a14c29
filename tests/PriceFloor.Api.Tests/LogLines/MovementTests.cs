using System.Text;
using Xunit;
using static PriceFloor.Api.Tests.LogLines.SentLog;

namespace PriceFloor.Api.Tests.LogLines;

/// <summary>What was sold is told line by line, as often as one likes.</summary>
public sealed class MovementTests
{
    private const string Sale = Heading + "10231/1,2027-03-14,RB-014,web,1,52.00,10231\n10231/2,2027-03-14,RB-014,web,2,55.00,10231\n";

    [Fact]
    public async Task A_sale_that_is_sent_twice_is_one_sale_and_a_corrected_one_replaces_it()
    {
        await using var studio = await Shop();
        using var shop = await studio.ClientFor("log");
        Assert.Equal("2 stored, 0 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.Sheet("source=web-shop", Sale, shop)).Told());
        Assert.Equal("0 stored, 2 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.Sheet("source=web-shop", Sale, shop)).Told());
        var before = studio.Clock.GetUtcNow();
        studio.Clock.Advance(TimeSpan.FromHours(1));
        var mended = Sale.Replace("55.00", "54.50", StringComparison.Ordinal);
        Assert.Equal("0 stored, 1 unchanged, 1 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.Sheet("source=web-shop", mended, shop)).Told());

        Assert.Equal("web-shop 2027-03-14 sold RB-014 web 1 52.00 USD\nweb-shop 2027-03-14 sold RB-014 web 2 109.00 USD",
            await studio.Listed("/v1/movements"));
        Assert.Equal("web-shop 2027-03-14 sold RB-014 web 1 52.00 USD\nweb-shop 2027-03-14 sold RB-014 web 2 110.00 USD",
            await studio.Listed($"/v1/movements?asOf={before:yyyy-MM-ddTHH:mm:ssZ}"));
        Assert.Equal("m3+b0", (await studio.Get("/v1/movements")).Json.GetProperty("basis").GetProperty("log").GetString());
    }

    [Fact]
    public async Task JSON_lines_and_sheets_say_the_same()
    {
        await using var studio = await Shop();
        await studio.Sheet("source=web-shop", Sale);
        const string Same = "\"source\":\"web-shop\",\"on\":\"2027-03-14\",\"sku\":\"RB-014\",\"channel\":\"web\",\"order\":\"10231\"",
            First = $$"""{"ref":"10231/1","what":"sold","pieces":1,"price":52,{{Same}}}""",
            Second = $$"""{"ref":"10231/2","pieces":2,"lineTotal":110.00,{{Same}}}""";
        foreach (var (type, body) in new[] { ("application/json", $"[{First},{Second}]"), ("application/x-ndjson", $"{First}\n{Second}\n") })
            Assert.Equal("0 stored, 2 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
                (await studio.SendBytes("POST", "/v1/movements/batch", Encoding.UTF8.GetBytes(body), type)).Told());
    }

    [Fact]
    public async Task Good_lines_are_stored_bad_ones_refused_and_unknown_names_wait_for_their_design()
    {
        await using var studio = await Shop();
        const string Text = Heading + "1,2027-03-14,RB-014,web,1,52.00,\n2,2027-13-14,RB-014,web,1,52.00,\n3,2027-03-14,NEW-7,web,2,24.00,\n"
            + "4,2027-03-14,RB-014,market,1,9.00,\n"
            + "5,2027-03-14,RB-014,web,1,1.005,\n,2027-03-14,RB-014,web,1,3.00,\n";
        var sent = await studio.Sheet("source=web-shop", Text);
        Assert.Equal("1 stored, 0 unchanged, 0 corrected, 0 withdrawn, 2 unplaced, 3 refused", sent.Told());
        Assert.Equal("3 bad-date, 6 out-of-range, 7 required", sent.Refused());
        Assert.Equal("""[{"name":"NEW-7","lines":1,"money":48.00},{"name":"market","lines":1,"money":9.00}]""",
            sent.Json.GetProperty("unplaced").GetRawText());
        Assert.True(sent.AddsUp());

        await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":4},"aliases":["NEW-7"]}""");
        Assert.Equal("1 stored, 1 unchanged, 0 corrected, 0 withdrawn, 1 unplaced, 3 refused",
            (await studio.Sheet("source=web-shop", Text)).Told());
    }

    [Fact]
    public async Task All_of_some_days_replaces_what_a_source_without_ids_had_there()
    {
        await using var studio = await Shop();
        const string Days = "source=till&from=2027-03-01&to=2027-03-31&channel=web";
        const string Top = "on,sku,pieces,price\n", Line = "2027-03-02,RB-014,1,52.00\n";
        Assert.Equal("3 stored, 0 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.Sheet(Days, Top + Line + Line + "2027-03-09,RB-014,1,50.00\n")).Told());
        // one of the two equal sales is gone, another came, one is of April
        var again = await studio.Sheet(Days, Top + "2027-04-01,RB-014,1,50.00\n2027-03-10,RB-014,1,49.00\n" + Line + "2027-03-09,RB-014,1,50.00\n");
        Assert.Equal("1 stored, 2 unchanged, 0 corrected, 1 withdrawn, 0 unplaced, 0 refused", again.Told());
        Assert.True(again.AddsUp());
        Assert.Equal(3, (await studio.Get("/v1/movements?source=till")).Json.GetProperty("items").GetArrayLength());

        var refused = (await studio.Sheet(Days, Top + "2027-03-02,RB-014,none,52.00\n")).IsProblem(422, "invalid-input");
        Assert.Equal(["bad-amount"], refused.Codes);
        Assert.Equal(3, (await studio.Get("/v1/movements?source=till")).Json.GetProperty("items").GetArrayLength());
        Assert.Equal("0 stored, 0 unchanged, 0 corrected, 3 withdrawn, 0 unplaced, 0 refused", (await studio.Sheet(Days, Top)).Told());
    }

    [Fact]
    public async Task A_cancelled_order_withdraws_its_line_and_so_does_DELETE()
    {
        await using var studio = await Shop();
        using var shop = await studio.ClientFor("log");
        await studio.Sheet("source=web-shop", Sale, shop);
        const string Void = "ref,on,sku,channel,pieces,price,status\n10231/1,2027-03-14,RB-014,web,1,52.00,Void\n"
            + "7/1,2027-03-14,RB-014,web,1,9.00,void\n";
        var sent = await studio.Sheet("source=web-shop&cancelled=void,lost", Void, shop);
        Assert.Equal("0 stored, 0 unchanged, 0 corrected, 1 withdrawn, 0 unplaced, 0 refused", sent.Told());
        Assert.True(sent.AddsUp());
        Assert.Equal(204, (await studio.Delete("/v1/movements/web-shop/10231%2F2", shop)).Status);
        (await studio.Delete("/v1/movements/web-shop/10231%2F2", shop)).IsProblem(404, "not-found");
        Assert.Equal("", await studio.Listed("/v1/movements"));
        Assert.Equal("2 stored, 0 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.Sheet("source=web-shop", Sale, shop)).Told());
    }

    [Fact]
    public async Task A_page_goes_on_after_the_last_position_and_is_not_sent_twice()
    {
        await using var studio = await Shop();
        await studio.Sheet("source=web-shop", Sale + "10232/1,2027-03-15,RB-014,web,1,58.00,\n");
        var first = await studio.Get("/v1/movements?limit=2");
        Assert.Equal("2", first.Json.GetProperty("next").GetString());
        Assert.Contains("after=2", first["Link"]!, StringComparison.Ordinal);
        var last = await studio.Get("/v1/movements?limit=2&after=2");
        Assert.Equal([3L], last.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("position").GetInt64()));
        Assert.Equal(304, (await studio.Get("/v1/movements?limit=2", null, ("If-None-Match", first["ETag"]!))).Status);
        Assert.Equal("web-shop 2027-03-15 sold RB-014 web 1 58.00 USD",
            await studio.Listed("/v1/movements?sku=RB-014&channel=web&from=2027-03-15&to=2027-03-15"));
        (await studio.Get("/v1/movements?after=first")).IsProblem(422, "invalid-input");
    }

    [Fact]
    public async Task Nobody_sends_without_a_source_or_ids_or_half_of_the_days()
    {
        await using var studio = await Shop();
        Assert.Equal(["source"], (await studio.Sheet("", Sale)).IsProblem(422, "invalid-input").Pointers);
        var withoutIds = await studio.Sheet("source=x&channel=web", "on,sku,pieces,price\n2027-03-14,RB-014,1,52.00\n");
        Assert.Equal(["refColumn"], withoutIds.IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["to"], (await studio.Sheet("source=x&from=2027-03-01", Sale)).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["source"], (await studio.Sheet("source=a%20b", Sale)).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channelColumn", "piecesColumn", "priceColumn", "skuColumn"],
            (await studio.Sheet("source=x", "ref,on\n1,2027-03-14\n")).IsProblem(422, "invalid-input").Pointers.Order());
        Assert.Equal("", await studio.Listed("/v1/movements"));
    }

    [Fact]
    public async Task A_sheet_cut_in_two_or_in_another_order_stores_the_same_lines()
    {
        var lines = Enumerable.Range(1, 40).Select(i => $"{i},2027-03-{1 + (i % 9):00},RB-014,web,1,{20 + (i % 7)}.00,{i / 3}\n").ToList();
        var listed = new List<string>();
        foreach (var parts in new[] { [lines], new[] { lines[..20], lines[20..] }, [Enumerable.Reverse(lines).ToList()], [lines, lines] })
        {
            await using var studio = await Shop();
            foreach (var part in parts)
                await studio.Sheet("source=web-shop", Heading + string.Concat(part));
            listed.Add(await studio.Listed("/v1/movements?limit=1000"));
        }

        Assert.All(listed, one => Assert.Equal(listed[0], one));
    }

    private static async Task<Studio> Shop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        studio.Clock.Advance(TimeSpan.FromDays(90));
        return studio;
    }
}
