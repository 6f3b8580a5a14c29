using System.Text;
using PriceFloor.Api.Access;
using PriceFloor.Api.Tests.Access;
using PriceFloor.Api.Tests.Http.Reading;
using PriceFloor.Api.Tests.Statements;
using Xunit;

namespace PriceFloor.Api.Tests.LogLines;

/// <summary>Buyers stay unknown, ids are hashed, and a key sees its own profiles.</summary>
public sealed class LogSecrecyTests
{
    [Fact]
    public async Task A_word_in_every_column_that_nobody_names_is_in_no_file_log_or_answer()
    {
        var log = new CapturedLog();
        await using var studio = new Studio(configure: log.Of);
        await studio.HasASmallShop();
        var secret = "Zaunkoenig" + Guid.NewGuid().ToString("N");
        string Row(int i, string sku, string price) => $"{secret}-{i},2027-03-14,{sku},web,1,{price},{secret}-order,{secret},{secret},{secret}\n";
        var sheet = "ref,on,sku,channel,pieces,price,order,buyer,e-mail,note\n" + Row(1, "RB-014", "52.00") + Row(2, "NEW-7", "4.00")
            + Row(3, "RB-014", secret) + $"9,{secret},RB-014,web,1,2.00,,,,\n8,2027-03-14,RB-014,web,1,2.00,,,,,{secret}\n\"{secret}\n";
        var texts = new List<string> { (await studio.Sheet("source=web-shop", sheet)).Text, (await studio.Get("/v1/movements")).Text };
        var bench = $"ref,on,sku,started,good,minutes,worker\n{secret},2027-03-14,RB-014,1,1,60,{secret}\n1,{secret},RB-014,1,1,60,{secret}\n";
        texts.Add((await studio.BenchSheet("source=bench-book", bench)).Text);
        texts.Add((await studio.Delete($"/v1/movements/web-shop/{secret}-1")).Text);
        texts.Add((await studio.Sheet($"source=web-shop&from=2027-03-01&to=2027-03-31", sheet)).Text);
        texts.Add((await studio.Post("/v1/movements/batch?source=x", $"[{{\"buyer\":\"{secret}\"}},{{\"on\":\"{secret}\"}}]")).Text);

        Assert.All(texts, text => Assert.DoesNotContain(secret, text, StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, line => line.Contains(secret, StringComparison.Ordinal));
        foreach (var file in Directory.EnumerateFiles(studio.Folder).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var memory = new MemoryStream();
            await stream.CopyToAsync(memory, Studio.Cancellation);
            Assert.True(memory.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(secret)) < 0, file);
        }
    }

    [Fact]
    public async Task A_held_key_neither_places_nor_reads_nor_withdraws_lines_of_another_profile()
    {
        await using var studio = await TwoStudios.Both();
        const string Both = SentLog.Heading + "1,2027-03-14,RB-014,web,1,52.00,\n2,2027-03-14,GLOBE,web,1,90.00,\n";
        await studio.Sheet("source=web-shop", Both);
        var own = await TwoStudios.Held(studio, "log", "read");
        var sent = await studio.Sheet("source=web-shop", Both, own);
        Assert.Equal("0 stored, 1 unchanged, 0 corrected, 0 withdrawn, 1 unplaced, 0 refused", sent.Told());
        Assert.Equal("web-shop 2027-03-14 sold RB-014 web 1 52.00 USD", await studio.Listed("/v1/movements", own));
        Assert.Equal("", await studio.Listed("/v1/movements?sku=GLOBE", own));
        (await studio.Delete("/v1/movements/web-shop/2", own)).IsProblem(404, "not-found");
        await studio.Sheet("source=web-shop&from=2027-03-01&to=2027-03-31", SentLog.Heading, own);
        var taken = SentLog.Heading + "2,2027-03-14,RB-014,web,1,52.00,\n";
        Assert.Equal("2 unknown-reference", (await studio.Sheet("source=web-shop", taken, own)).Refused());
        Assert.Equal("web-shop 2027-03-14 sold GLOBE web 1 90.00 USD", await studio.Listed("/v1/movements"));
    }

    [Fact]
    public async Task A_key_that_sends_reads_nothing()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        using var shop = await studio.ClientFor("log");
        foreach (var path in new[] { "/v1/movements", "/v1/bench-log", "/v1/designs", "/v1/price-checks?sku=RB-014&channel=web&price=58" })
            (await studio.Get(path, shop)).IsProblem(403, "key-not-allowed");
        using var reader = await studio.ClientFor("read", "write");
        (await studio.Sheet("source=x", SentLog.Heading, reader)).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task Ten_thousand_unknown_names_are_counted_and_the_largest_are_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var lines = Enumerable.Range(1, 10_000).Select(i => $"{i},2027-03-14,N{i},web,1,{i},\n");
        var sent = await studio.Sheet("source=x", SentLog.Heading + string.Concat(lines));
        Assert.Equal("0 stored, 0 unchanged, 0 corrected, 0 withdrawn, 10000 unplaced, 0 refused", sent.Told());
        Assert.Equal(200, sent.Json.GetProperty("unplaced").GetArrayLength());
        Assert.Equal("N10000", sent.Json.GetProperty("unplaced")[0].GetProperty("name").GetString());
        Assert.True(sent.AddsUp() && sent.Text.Length < 20_000);
    }
}
