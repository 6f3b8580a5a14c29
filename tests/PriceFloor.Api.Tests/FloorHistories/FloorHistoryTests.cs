using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.FloorHistories;

public sealed class FloorHistoryTests
{
    private static readonly string[] s_fields = ["floorPrice", "targetPrice", "listedPrice", "verdict", "movedBy"];

    [Fact]
    public async Task Each_item_is_a_moment_at_which_a_price_moved_and_names_what_moved_it()
    {
        await using var studio = await AYear();
        var items = Items(await studio.Get("/v1/designs/RB-014/floor-history?channel=web"));
        Assert.Equal(
        [
            "61.74 120.00 null null [\"web@1\"]", // when the last of the three was stored
            "61.74 120.00 58.00 \"below-floor\" [\"RB-014/web@1\"]",
            "62.76 122.00 58.00 \"below-floor\" [\"main@2\"]", // 61,000 / 1,000; (61 + 0.25) / 0.976 = 62.7561
            "62.76 160.00 58.00 \"below-floor\" [\"RB-014/shops@1\"]", // wholesale at 80.00, doubled
            "62.76 160.00 161.00 \"meets-target\" [\"RB-014/web@2\"]",
            "54.61 160.00 161.00 \"meets-target\" [\"RB-014@2\"]", // brisker: (8 h x 30.50 / 4.6 + 0.25) / 0.976 = 54.6039, up
        ], items);
    }

    [Fact]
    public async Task Each_item_says_in_words_what_changed_in_the_documents_that_moved_it()
    {
        await using var studio = await AYear();
        var items = (await studio.Get("/v1/designs/RB-014/floor-history?channel=web")).Json.GetProperty("items").EnumerateArray()
            .Select(item => string.Join("; ", item.GetProperty("changed").EnumerateArray().Select(words => words.GetString())));
        Assert.Equal(
        [
            "channel web: new",
            "listed price on web: new, 58.00",
            "expense without a name: 24,000.00 to 25,000.00 a year",
            "listed price on shops: new, 80.00",
            "listed price on web: 58.00 to 161.00",
            "design: pieces a day 4 to 4.6",
        ], items);
    }

    [Fact]
    public async Task A_part_of_a_history_says_what_changed_since_before_it()
    {
        await using var studio = await AYear();
        var items = (await studio.Get("/v1/designs/RB-014/floor-history?channel=web&limit=1")).Json.GetProperty("items");
        Assert.Equal("[\"design: pieces a day 4 to 4.6\"]", items[items.GetArrayLength() - 1].GetProperty("changed").GetRawText());
    }

    [Fact]
    public async Task The_picture_tells_the_first_changes_of_a_move_and_how_many_more_the_answer_has()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        static string Expenses(int amount) => string.Join(',',
            Enumerable.Range(1, 8).Select(i => $$"""{"name":"Cost {{i}}","amount":{{amount}},"per":"year"}"""));
        foreach (var amount in new[] { 100, 200 })
        {
            studio.Clock.Advance(TimeSpan.FromDays(1));
            await studio.Has("/v1/profiles/main",
                Sample.SmallProfile.Replace("""{"amount":24000,"per":"year"}""", Expenses(amount), StringComparison.Ordinal));
        }

        var items = (await studio.Get("/v1/designs/RB-014/floor-history?channel=web")).Json.GetProperty("items");
        Assert.Equal(8, items[items.GetArrayLength() - 1].GetProperty("changed").GetArrayLength());
        var picture = (await studio.Get("/v1/designs/RB-014/floor-history.svg?channel=web")).Text;
        foreach (var words in new[] { "expense Cost 1: 100.00 to 200.00 a year", "expense Cost 4: 100.00 to 200.00 a year", ">and 4 more<" })
            Assert.Contains(words, picture, StringComparison.Ordinal);
        Assert.DoesNotContain(">expense Cost 5: 100", picture, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_agrees_with_the_floor_as_it_was_at_each_moment()
    {
        await using var studio = await AYear();
        foreach (var item in (await studio.Get("/v1/designs/RB-014/floor-history?channel=web")).Json.GetProperty("items").EnumerateArray())
        {
            var then = (await studio.Get($"/v1/price-list?channel=web&asOf={Uri.EscapeDataString(item.GetProperty("at").GetString()!)}"))
                .Json.GetProperty("items").EnumerateArray().Single(row => row.GetProperty("sku").GetString() == "RB-014");
            foreach (var name in new[] { "floorPrice", "targetPrice", "listedPrice", "verdict" })
                Assert.Equal(then.GetProperty(name).GetRawText(), item.GetProperty(name).GetRawText());
        }
    }

    [Fact]
    public async Task A_long_history_is_read_backwards_in_pieces_that_fit_together()
    {
        await using var studio = await AYear();
        var whole = Items(await studio.Get("/v1/designs/RB-014/floor-history?channel=web"));
        var pieces = new List<string>();
        var asOf = "";
        do
        {
            var page = await studio.Get($"/v1/designs/RB-014/floor-history?channel=web&limit=2{asOf}");
            pieces.InsertRange(0, Items(page));
            asOf = page.Json.GetProperty("earlier").GetString() is { } earlier ? $"&asOf={Uri.EscapeDataString(earlier)}" : "";
            if (asOf.Length > 0 && (await studio.Get($"/v1/designs/RB-014/floor-history?channel=web&limit=2{asOf}")).Status != 200)
                break; // before the channel was there
        }
        while (asOf.Length > 0);
        Assert.Equal(whole, pieces.SkipWhile(item => item.StartsWith("null", StringComparison.Ordinal))
            .Aggregate(new List<string>(), (kept, item) => kept.Count > 0 && Prices(kept[^1]) == Prices(item) ? kept : [.. kept, item]));
    }

    [Fact]
    public async Task A_time_without_the_design_is_a_gap()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Delete("/v1/designs/RB-014");
        (await studio.Get("/v1/designs/RB-014/floor-history?channel=web")).IsProblem(404, "not-found");
        await studio.Put("/v1/designs/RB-014", Sample.Pendant);
        var history = await studio.Get("/v1/designs/RB-014/floor-history?channel=web");
        Assert.Equal(["61.74", "61.74", "null", "61.74"],
            history.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("floorPrice").GetRawText()));
        Assert.Equal("not-stored", history.Json.GetProperty("items")[2].GetProperty("reason").GetString());
    }

    [Fact]
    public async Task Prices_of_another_currency_are_not_compared_with_this_one()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/designs/RB-014", Sample.Pendant);
        await studio.Has("/v1/channels/web", Sample.Shop.Replace("USD", "EUR", StringComparison.Ordinal));
        await studio.Has("/v1/channels/web", Sample.Shop);
        Assert.Equal(["currency-mismatch", null], (await studio.Get("/v1/designs/RB-014/floor-history?channel=web"))
            .Json.GetProperty("items").EnumerateArray().Select(item => item.TryGetProperty("reason", out var reason) ? reason.GetString() : null));
    }

    [Fact]
    public async Task What_is_missing_or_unknown_is_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        (await studio.Get("/v1/designs/NOPE/floor-history?channel=web")).IsProblem(404, "not-found");
        Assert.Equal(["channel"], (await studio.Get("/v1/designs/RB-014/floor-history?channel=x")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["channel", "limit"],
            (await studio.Get("/v1/designs/RB-014/floor-history?limit=0")).IsProblem(422, "invalid-input").Pointers.Order());
    }

    /// <summary>
    /// Costs rise, a shop begins to buy, the price is fixed, the work gets faster; changes that affect nothing here happen in between.
    /// </summary>
    private static async Task<Studio> AYear()
    {
        var studio = new Studio();
        async Task Later(string path, string json)
        {
            studio.Clock.Advance(TimeSpan.FromDays(30));
            await studio.Has(path, json);
        }

        await studio.HasASmallShop();
        await Later("/v1/designs/OTHER", Sample.Pendant);
        await Later("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "25000", StringComparison.Ordinal));
        await Later("/v1/channels/web", Sample.Shop.Replace("{\"sells\"", "{\"name\":\"Web\",\"sells\"", StringComparison.Ordinal)); // moves nothing
        await Later("/v1/channels/shops", """{"sells":"wholesale","currency":"USD"}""");
        await Later("/v1/designs/RB-014/prices/shops", """{"price":80.00}""");
        await Later("/v1/designs/RB-014/prices/web", """{"price":161.00}""");
        await Later("/v1/designs/RB-014", Sample.Pendant.Replace("\"piecesPerDay\":4", "\"piecesPerDay\":4.6", StringComparison.Ordinal));
        return studio;
    }

    private static List<string> Items(Answer history) => [.. history.Json.GetProperty("items").EnumerateArray().Select(item =>
        string.Join(' ',
            s_fields.Select(name => item.GetProperty(name).GetRawText())))];

    private static string Prices(string item) => item[..item.IndexOf('[', StringComparison.Ordinal)];
}
