using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>A stored document that was damaged on the disk or edited by hand is never read as a zero or a default.</summary>
public sealed class DamagedDocumentTests
{
    [Theory]
    [InlineData("\"amount\":24000.00", "\"amount\":\"24O00.00\"")] // a letter among digits
    [InlineData("\"amount\":24000.00", "\"amount\":-24000.00")]
    [InlineData("\"amount\":24000.00,", "")]
    [InlineData("\"per\":\"year\"", "\"per\":\"yaer\"")]
    [InlineData("\"per\":\"year\"", "\"per\":\"year\",\"amuont\":1")]
    [InlineData("\"weeksPerYear\":50", "\"weeksPerYear\":500")]
    [InlineData("\"currency\":\"USD\"", "\"currency\":\"USX\"")]
    [InlineData("\"per\":\"year\"", "\"per\":\"time\"")] // so many times a year: how many?
    [InlineData("{", "[")]
    public async Task A_damaged_profile_is_named_and_gives_no_floor_until_it_is_put_again(string sound, string damaged)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/OTHER", """{"profile":"other","making":{"piecesPerDay":4}}""");
        await using var again = await Damage(studio, "profile", "main", sound, damaged);

        foreach (var path in new[]
        {
            "/v1/price-checks?sku=RB-014&channel=web&price=58",
            "/v1/designs/RB-014/floor-price",
            "/v1/profiles/main",
            "/v1/profiles/main/requirement",
            "/v1/profiles/main/revisions/1",
        })
            Assert.Contains("profile \"main\" (revision 1)",
                (await again.Get(path)).IsProblem(503, "damaged-document").Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        // Everything that does not need it still answers, and a list leaves it out.
        Assert.Equal(200, (await again.Get("/v1/designs/OTHER/floor-price")).Status);
        var reasons = (await again.Get("/v1/price-list?channel=web")).Json.GetProperty("items").EnumerateArray().ToDictionary(
            item => item.GetProperty("sku").GetString()!, item => item.TryGetProperty("reason", out var reason) ? reason.GetString() : null);
        Assert.Equal(("damaged-document", null), (reasons["RB-014"], reasons["OTHER"]));

        Assert.Equal(200, (await again.Put("/v1/profiles/main", Sample.SmallProfile)).Status);
        Assert.Equal("61.74", (await again.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).Json.GetProperty("floorPrice").GetRawText());
    }

    [Fact]
    public async Task A_damaged_design_or_channel_stops_only_what_rests_on_it()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/SOUND", """{"profile":"main","making":{"piecesPerDay":4},"aliases":["blue one"]}""");
        await studio.Has("/v1/channels/market", """{"sells":"retail","currency":"USD"}""");
        await using var design = await Damage(studio, "design", "RB-014", "\"piecesPerDay\":4", "\"piecesPerDay\":\"four\"");
        (await design.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).IsProblem(503, "damaged-document");
        Assert.Equal(200, (await design.Post("/v1/price-checks", """{"sku":"blue one","channel":"web","price":58}""")).Status);

        await using var channel = await Damage(design, "channel", "web", "\"sells\":\"retail\"", "\"sells\":\"retial\"");
        Assert.Equal(200, (await channel.Get("/v1/price-checks?sku=SOUND&channel=market&price=58")).Status);
        var list = (await channel.Get("/v1/price-list")).Json;
        Assert.Equal(["market", "market"], list.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("channel").GetString()));
        Assert.Equal("damaged-document", list.GetProperty("warnings")[0].GetProperty("code").GetString());
    }

    [Theory]
    // two ways to say it: which?
    [InlineData("design", "RB-014", "\"piecesPerDay\":4", "\"piecesPerDay\":4,\"minutesPerPiece\":1", "/v1/designs/RB-014")]
    [InlineData("channel", "web", "\"priceEnding\":0", "\"priceEnding\":0.5", "/v1/channels/web")]
    public async Task A_document_that_breaks_a_rule_between_its_fields_is_damaged(string kind, string key, string sound, string damaged, string path)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await using var again = await Damage(studio, kind, key, sound, damaged);
        (await again.Get(path)).IsProblem(503, "damaged-document");
        (await again.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).IsProblem(503, "damaged-document");
    }

    [Fact]
    public async Task Lists_and_exports_name_the_damaged_document_and_send_none_of_its_text()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/SOUND", """{"profile":"main","making":{"piecesPerDay":4}}""");
        await using var again = await Damage(studio, "design", "RB-014", "\"piecesPerDay\":4", "\"piecesPerDay\":\"four\"");
        foreach (var accept in new[] { "application/json", "text/csv", "application/x-ndjson" })
            Assert.Contains("design \"RB-014\" (revision 1)", (await again.Get("/v1/designs", headers: ("Accept", accept)))
                .IsProblem(503, "damaged-document").Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        (await again.Get("/v1/designs/RB-014/revisions")).IsProblem(503, "damaged-document");
        Assert.Equal(200, (await again.Get("/v1/designs?after=RB-014")).Status);
    }

    [Fact]
    public async Task A_batch_of_checks_continues_after_a_damaged_document()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/SOUND", """{"profile":"main","making":{"piecesPerDay":4}}""");
        await using var again = await Damage(studio, "design", "RB-014", "\"piecesPerDay\":4", "\"piecesPerDay\":\"four\"");

        var items = (await again.Post("/v1/price-checks/batch",
            """[{"sku":"RB-014","channel":"web","price":58},{"sku":"SOUND","channel":"web","price":58}]""")).Json.GetProperty("items");
        Assert.Equal("/problems/damaged-document", items[0].GetProperty("type").GetString());
        Assert.Equal("61.74", items[1].GetProperty("floorPrice").GetRawText());
        var sheet = await again.SendBytes("POST", "/v1/price-checks/batch",
            "sku,channel,price\nRB-014,web,58\nSOUND,web,58\nRB-014,web,59\n"u8.ToArray(), "text/csv");
        Assert.Matches(
            "(?s)RB-014,web,58,,,,\"?Line 2, .*damaged.*SOUND,web,58,below-floor,61.74,.*RB-014,web,59,,,,\"?Line 4, .*damaged", sheet.Text);
    }

    [Fact]
    public async Task A_floor_price_leaves_out_a_damaged_channel_that_it_does_not_need()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/market", """{"sells":"retail","currency":"USD"}""");
        await using var again = await Damage(studio, "channel", "market", "\"sells\":\"retail\"", "\"sells\":\"retial\"");
        var floor = (await again.Get("/v1/designs/RB-014/floor-price")).Json;
        Assert.Equal(["web"], floor.GetProperty("channels").EnumerateArray().Select(channel => channel.GetProperty("channel").GetString()));
        Assert.Contains("damaged-document",
            floor.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()));
    }

    [Theory]
    [InlineData("\"profile\":\"main\"", "\"profile\":7")]
    [InlineData("{", "[")]
    public async Task A_key_limited_to_a_profile_does_not_see_a_damaged_design_that_may_belong_to_another(string sound, string damaged)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await using var again = await Damage(studio, "design", "RB-014", sound, damaged);
        var held = again.ClientWith((await again.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["main"]}"""))
            .Json.GetProperty("key").GetString());
        (await again.Get("/v1/designs/RB-014", held)).IsProblem(404, "not-found");
        Assert.Equal("""{"items":[],"next":null}""", (await again.Get("/v1/designs", held)).Text);
    }

    [Fact]
    public async Task A_direction_mark_that_was_stored_before_it_was_refused_is_not_damage()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/web", "{\"name\":\"Shop\"," + Sample.Shop[1..]);
        await using var again = await Damage(studio, "channel", "web", "\"Shop\"", "\"Sho\u202ep\"", number: 2);
        Assert.Equal("Sho\u202ep", (await again.Get("/v1/channels/web")).Json.GetProperty("name").GetString());
        Assert.Equal("61.74", (await again.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).Json.GetProperty("floorPrice").GetRawText());
        Assert.Equal(["control-character"],
            (await again.Put("/v1/channels/web", (await again.Get("/v1/channels/web")).Text)).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task A_damaged_old_revision_does_not_take_down_the_present()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "30000", StringComparison.Ordinal));
        await using var again = await Damage(studio, "profile", "main", "24000", "24O00", number: 1);
        Assert.Equal(200, (await again.Get("/v1/designs/RB-014/floor-price")).Status);
        (await again.Get("/v1/profiles/main/revisions/1")).IsProblem(503, "damaged-document");
    }

    [Fact]
    public async Task Check_store_names_every_damaged_document()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await using var again = await Damage(studio, "profile", "main", "\"amount\":24000.00", "\"amount\":\"24O00.00\"");
        var output = new StringWriter();
        var settings = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["PRICEFLOOR_DATA"] = again.Folder }).Build();
        Assert.Equal(1, StoreCommands.Run("check-store", ["check-store"], settings, output));
        Assert.Matches("profile main, revision 1: #/expenses/0/amount: .* is not a plain number", output.ToString());
    }

    /// <summary>The studio, restarted on a store in which a text was edited by hand.</summary>
    private static async Task<Studio> Damage(Studio studio, string kind, string key, string sound, string damaged, int number = 1)
    {
        await using (var store = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False"))
        {
            var body = store.ExecuteScalar<string>("SELECT body FROM revision WHERE kind = @kind AND key = @key AND number = @number",
                new { kind, key, number })!;
            var at = body.IndexOf(sound, StringComparison.Ordinal);
            Assert.True(at >= 0, body);
            body = string.Concat(body.AsSpan(0, at), damaged, body.AsSpan(at + sound.Length));
            store.Execute("UPDATE revision SET body = @body WHERE kind = @kind AND key = @key AND number = @number", new { body, kind, key, number });
        }

        return await studio.Restarted();
    }
}
