using System.Globalization;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.FloorChanges;

public sealed class FloorChangeTests
{
    [Fact]
    public async Task What_moved_a_floor_is_named_down_to_the_field()
    {
        // 2,000 more a year over 1,000 pieces: 62.00 must arrive, (62 + 0.25) / 0.976 = 63.79 on the floor; the target doubles 62.00.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var cursor = Next((await studio.Get("/v1/floor-changes")).Json);
        await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "26000", StringComparison.Ordinal));
        var changes = (await studio.Get($"/v1/floor-changes?since={cursor}")).Json;
        Assert.Equal(
            """[{"sku":"RB-014","channel":"web","currency":"USD","oldFloorPrice":61.74,"newFloorPrice":63.79,"oldTargetPrice":120.00,"newTargetPrice":124.00,"listedPrice":58.00,"verdict":"below-floor","carriesItsShare":false,"movedBy":["main@2: expenses/0/amount"]}]""",
            changes.GetProperty("items").GetRawText());
        Assert.Equal("[]", (await studio.Get($"/v1/floor-changes?since={Next(changes)}")).Json.GetProperty("items").GetRawText());
    }

    [Fact]
    public async Task A_write_that_moves_no_price_is_not_a_change()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var cursor = Next((await studio.Get("/v1/floor-changes")).Json);
        await studio.Put("/v1/profiles/main",
            Sample.SmallProfile.Replace("\"currency\"", "\"name\":\"A year\",\"currency\"", StringComparison.Ordinal));
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":99}""");
        Assert.Equal("[]", (await studio.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items").GetRawText());
    }

    [Fact]
    public async Task A_price_listed_on_a_wholesale_channel_moves_the_target()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD"}""");
        var cursor = Next((await studio.Get("/v1/floor-changes")).Json);
        await studio.Put("/v1/designs/RB-014/prices/order", """{"price":75}""");
        var item = (await studio.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items")[0];
        Assert.Equal(("\"web\"", "120.00", "150.00", """["RB-014/order@1: created"]"""), (item.GetProperty("channel").GetRawText(),
            item.GetProperty("oldTargetPrice").GetRawText(), item.GetProperty("newTargetPrice").GetRawText(),
            item.GetProperty("movedBy").GetRawText()));
    }

    [Fact]
    public async Task Since_is_a_time_or_a_cursor_and_nothing_else()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        studio.Clock.Advance(TimeSpan.FromDays(10));
        await studio.Put("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":5}}""");
        Assert.Equal(["RB-014@2: making/piecesPerDay"], (await studio.Get("/v1/floor-changes?since=2027-01-05T00:00:00Z"))
            .Json.GetProperty("items")[0].GetProperty("movedBy").EnumerateArray().Select(by => by.GetString()));
        Assert.Equal("[]", (await studio.Get("/v1/floor-changes?since=2028-01-05T00:00:00Z")).Json.GetProperty("items").GetRawText());
        Assert.Equal("[]",
            (await studio.Get("/v1/floor-changes?since=2027-01-05T00:00:00Z&asOf=2027-01-06T00:00:00Z")).Json.GetProperty("items").GetRawText());
        foreach (var since in new[] { "yesterday", "p", "p-1", "7", "p99999999999999999999" })
            Assert.Equal(["since"], (await studio.Get($"/v1/floor-changes?since={since}")).IsProblem(422, "invalid-input").Pointers);
        var cursor = Next((await studio.Get("/v1/floor-changes")).Json);
        foreach (var since in new[]
        {
            "p5",
            "p5.",
            "p5.0123456789ab",
            cursor + "0",
            cursor.Replace("p5", "p05", StringComparison.Ordinal),
            cursor.Replace("p5", "p6", StringComparison.Ordinal),
        })
            Assert.Equal(["unknown-cursor"], (await studio.Get($"/v1/floor-changes?since={since}")).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task What_came_later_is_not_in_the_answer_of_an_earlier_time()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var cursor = Next((await studio.Get("/v1/floor-changes")).Json);
        await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "26000", StringComparison.Ordinal));
        studio.Clock.Advance(TimeSpan.FromDays(10));
        await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "26000", StringComparison.Ordinal)
            .Replace("\"amount\":3000", "\"amount\":3100", StringComparison.Ordinal));
        var then = (await studio.Get($"/v1/floor-changes?since={cursor}&asOf=2027-01-05T00:00:00Z")).Json;
        Assert.Equal(["main@2: expenses/0/amount"],
            then.GetProperty("items")[0].GetProperty("movedBy").EnumerateArray().Select(by => by.GetString()));
        var rest = (await studio.Get($"/v1/floor-changes?since={Next(then)}")).Json;
        Assert.Equal(["main@3: household/0/amount"],
            rest.GetProperty("items")[0].GetProperty("movedBy").EnumerateArray().Select(by => by.GetString()));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Who_follows_the_cursor_has_the_present_prices_whatever_was_written_between_and_across_restarts(int seed)
    {
        var random = new Random(seed);
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD"}""");
        var held = new Dictionary<string, string>();
        var cursor = "";
        for (var round = 0; round < 40; round++)
        {
            for (var writes = random.Next(5); writes > 0; writes--)
                await AWrite(studio, random);
            if (random.Next(8) == 0)
                studio = await studio.Restarted();

            var changes = (await studio.Get("/v1/floor-changes" + cursor)).Json;
            foreach (var item in changes.GetProperty("items").EnumerateArray())
            {
                var name = $"{item.GetProperty("sku")}/{item.GetProperty("channel")}";
                Assert.Equal(held.GetValueOrDefault(name, "null null"),
                    $"{item.GetProperty("oldFloorPrice").GetRawText()} {item.GetProperty("oldTargetPrice").GetRawText()}");
                Assert.NotEmpty(item.GetProperty("movedBy").EnumerateArray());
                held[name] = Prices(item, "newFloorPrice", "newTargetPrice");
                if (held[name] == "null null")
                    held.Remove(name);
            }

            cursor = "?since=" + Next(changes);
            var list = (await studio.Get("/v1/price-list")).Json.GetProperty("items").EnumerateArray()
                .Where(row => row.GetProperty("floorPrice").ValueKind != JsonValueKind.Null);
            Assert.Equal(list.Select(row => $"{row.GetProperty("sku")}/{row.GetProperty("channel")}: {Prices(row, "floorPrice", "targetPrice")}")
                .Order(StringComparer.Ordinal), held.Select(pair => $"{pair.Key}: {pair.Value}").Order(StringComparer.Ordinal));
        }

        await studio.DisposeAsync();
    }

    private static async Task AWrite(Studio studio, Random random)
    {
        var (sku, amount) = ($"D-{random.Next(4)}", random.Next(20, 90).ToString(CultureInfo.InvariantCulture));
        _ = random.Next(9) switch
        {
            0 => await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", $"2{amount}00", StringComparison.Ordinal)),
            1 => await studio.Delete($"/v1/designs/{sku}"),
            2 => await studio.Put($"/v1/designs/{sku}/prices/order", $$"""{"price":{{amount}}}"""),
            3 => await studio.Delete($"/v1/designs/{sku}/prices/order"),
            4 => await studio.Put("/v1/channels/fair",
                """{"sells":"retail","currency":"USD","costPerPiece":0.X}""".Replace("X", amount, StringComparison.Ordinal)),
            5 => await studio.Delete("/v1/channels/fair"),
            6 => await studio.Put("/v1/profiles/second", Sample.SmallProfile.Replace("3000", $"3{amount}0", StringComparison.Ordinal)),
            _ => await studio.Put($"/v1/designs/{sku}", """{"profile":"P","making":{"minutesPerPiece":M}}""".Replace("P",
                random.Next(3) == 0 ? "second" : "main", StringComparison.Ordinal).Replace("M", amount, StringComparison.Ordinal)),
        };
    }

    private static string Prices(JsonElement row, string floor, string target) =>
        $"{row.GetProperty(floor).GetRawText()} {row.GetProperty(target).GetRawText()}";

    private static string Next(JsonElement answer) => answer.GetProperty("next").GetString()!;

    [Fact]
    public async Task With_a_limit_who_follows_next_gets_everything_once_and_of_one_moment()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD"}""");
        foreach (var sku in new[] { "A.1", "B", "C" })
            await studio.Has($"/v1/designs/{sku}", """{"profile":"main","making":{"piecesPerDay":4}}""");
        var whole = Items((await studio.Get("/v1/floor-changes")).Json);
        Assert.Equal(8, whole.Count); // four designs on two channels

        var (got, next) = (new List<string>(), "");
        for (var page = 0; page == 0 || got.Count < whole.Count; page++)
        {
            var answer = await studio.Get("/v1/floor-changes?limit=3" + (next.Length == 0 ? "" : "&since=" + Uri.EscapeDataString(next)));
            got.AddRange(Items(answer.Json));
            next = answer.Json.GetProperty("next").GetString()!;
            Assert.Equal(got.Count < whole.Count, answer["Link"]?.Contains("since=p0.", StringComparison.Ordinal) == true);
            if (page == 0)
                // changes made meanwhile come after the current answer
                await studio.Put("/v1/designs/A.1", """{"profile":"main","making":{"piecesPerDay":8}}""");
        }

        Assert.Equal(whole, got);
        // half of 60.00; (30 + 0.25) / 0.976 = 30.9939
        Assert.Equal(["A.1/fair 30.00", "A.1/web 31.00"], Items((await studio.Get("/v1/floor-changes?since=" + next)).Json));
        Assert.Equal(whole.SkipWhile(item => !item.StartsWith("B/", StringComparison.Ordinal)).Skip(1).Where(item => item[0] != 'A'),
            Items((await studio.Get("/v1/floor-changes?after=B/fair")).Json));

        static List<string> Items(JsonElement answer) => [.. answer.GetProperty("items").EnumerateArray()
            .Select(item => $"{item.GetProperty("sku")}/{item.GetProperty("channel")} {item.GetProperty("newFloorPrice").GetRawText()}")];
    }

    [Fact]
    public async Task A_key_that_may_check_follows_and_learns_no_document()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        using var check = await studio.ClientFor("check");
        var item = (await studio.Get("/v1/floor-changes", check)).Json.GetProperty("items")[0];
        Assert.Equal("61.74", item.GetProperty("newFloorPrice").GetRawText());
        Assert.False(item.TryGetProperty("movedBy", out _));
        Assert.True((await studio.Get("/v1/floor-changes")).Json.GetProperty("items")[0].TryGetProperty("movedBy", out _));
        using var verdict = await studio.ClientFor("verdict");
        (await studio.Get("/v1/floor-changes", verdict)).IsProblem(403, "key-not-allowed");
    }
}
