using System.Text;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

/// <summary>
/// A key that may only check learns verdicts, or floor and target prices, and no costs: not through answers, problems, warnings, tags or the time
/// that an answer takes. The small shop: floor 60.00; on the web (60.00 + 0.25) / 0.976 = 61.74; the own retail price 2 x 60.00 = 120.00.
/// </summary>
public sealed class WhatACheckerLearnsTests
{
    private static readonly string[] s_prices = ["61.74", "120.00"];

    /// <summary>What the year costs, an hour, the floor itself, what is left of 58.00: 58.00 - 1.392 - 0.25 = 56.358.</summary>
    private static readonly string[] s_costs = ["24000", "36000", "30.00", "60.00", "56.36", "3.64", "18.00", "2000"];

    private static readonly string[] s_nosy =
    [
        "/v1/price-checks?sku=RB-014&channel=web&price=58", "/v1/price-checks?sku=RB-014&channel=web&price=58&workings=true",
        "/v1/price-checks?sku=RB-014&channel=web&price=0.01", "/v1/price-checks?sku=rb-014&channel=web&price=58",
        "/v1/price-checks?sku=RB-014&channel=WEB&price=58", "/v1/price-checks?sku=RB-014&channel=web&price=58&currency=EUR",
        "/v1/price-checks?sku=RB-014&channel=nope&price=58", "/v1/price-checks?sku=RB-014&channel=dear&price=58",
        "/v1/price-checks?sku=RB-014&channel=euro&price=58", "/v1/price-checks?sku=RB-014&channel=web&price=58&asOf=2020-01-01T00:00:00Z",
        "/v1/price-checks?sku=RB-014&channel=web&price=58.001", "/v1/price-checks?sku=RB-014&channel=web&price=999999999999999999",
        "/v1/designs/RB-014", "/v1/designs/RB-014/floor-price", "/v1/profiles/main", "/v1/designs/RB-014/remedies?channel=web",
        "/v1/designs/RB-014/prices/web", "/v1/floor-changes", "/v1/keys", "/v1/audit",
    ];

    [Theory]
    [InlineData("verdict")]
    [InlineData("check")]
    public async Task No_answer_and_no_refusal_reveals_costs(string scope)
    {
        await using var studio = await AShop();
        using var client = await studio.ClientFor(scope);
        foreach (var path in s_nosy)
        {
            var answer = await studio.Get(path, client);
            var told = answer.Text.Replace(answer["X-Request-Id"]!, "", StringComparison.Ordinal); // an id may have any digits
            foreach (var figure in scope == "verdict" ? [.. s_costs, .. s_prices] : s_costs)
                Assert.False(
                    $"{told} {string.Join(' ', answer.Headers.Where(header => header.Key != "X-Request-Id").Select(header => header.Value))}".Contains(
                        figure, StringComparison.Ordinal),
                    $"{path}: {figure} in {answer.Text}");
            Assert.Null(answer["ETag"]);
        }
    }

    [Fact]
    public async Task A_batch_reveals_no_more_than_a_single_check_in_any_format()
    {
        await using var studio = await AShop();
        using var verdict = await studio.ClientFor("verdict");
        using var check = await studio.ClientFor("check");
        foreach (var (type, body) in new[]
        {
            ("application/json", """[{"sku":"RB-014","channel":"web","price":58},{"sku":"rb-014","channel":"web","price":58}]"""),
            ("application/x-ndjson",
                "{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":58}\n{\"sku\":\"rb-014\",\"channel\":\"web\",\"price\":58}\n"),
            ("text/csv", "sku,channel,price\nRB-014,web,58\nrb-014,web,58\n"),
        })
            foreach (var accept in new[] { "application/json", "application/x-ndjson", "text/csv" })
            {
                async Task<string> Ask(HttpClient client) =>
                    (await studio.SendBytes("POST", "/v1/price-checks/batch", Encoding.UTF8.GetBytes(body), type, client, ("Accept", accept))).Text;
                var (word, figures, all) = (await Ask(verdict), await Ask(check), await Ask(studio.Client));
                Assert.All(s_prices.Concat(s_costs), figure => Assert.DoesNotContain(figure, word, StringComparison.Ordinal));
                Assert.All(s_costs, figure => Assert.DoesNotContain(figure, figures, StringComparison.Ordinal));
                Assert.All(s_prices, figure => Assert.Contains(figure, figures, StringComparison.Ordinal));
                Assert.DoesNotContain("there is \"RB-014\"",
                    figures.Replace("\\", "", StringComparison.Ordinal).Replace("\"\"", "\"", StringComparison.Ordinal), StringComparison.Ordinal);
                Assert.Contains("there is \"RB-014\"",
                    all.Replace("\\", "", StringComparison.Ordinal).Replace("\"\"", "\"", StringComparison.Ordinal), StringComparison.Ordinal);
            }
    }

    [Fact]
    public async Task Only_readers_learn_which_names_exist()
    {
        await using var studio = await AShop();
        foreach (var (scope, told) in new[] { ("verdict", false), ("check", false), ("read", true) })
        {
            using var client = await studio.ClientFor(scope);
            Assert.Equal((scope, told), (scope,
                (await studio.Get("/v1/price-checks?sku=rb-014&channel=web&price=58", client)).Text.Contains("RB-014", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public async Task A_checker_is_warned_of_the_price_only()
    {
        await using var studio = await AShop();
        await studio.Has("/v1/channels/stepped", """{"sells":"retail","currency":"USD","priceStep":5.00}""");
        string[] Codes(Answer answer) =>
            [.. answer.Json.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()!)];
        const string Path = "/v1/price-checks?sku=RB-014&channel=stepped&price=58";
        Assert.Equal(["not-an-allowed-price"], Codes(await studio.Get(Path, await studio.ClientFor("verdict"))));
        Assert.Equal(["not-an-allowed-price"], Codes(await studio.Get(Path, await studio.ClientFor("check"))));
    }

    [Fact]
    public async Task The_tag_of_a_price_list_depends_only_on_its_content()
    {
        await using var studio = await AShop();
        using var check = await studio.ClientFor("check");
        var list = await studio.Get("/v1/price-list?channel=web", check);
        Assert.Equal($"\"{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(list.Text)).AsSpan(0, 16))}\"",
            list["ETag"]);
        Assert.All(s_costs, figure => Assert.DoesNotContain(figure, list.Text, StringComparison.Ordinal));
        await studio.Has("/v1/profiles/unused", Sample.SmallProfile.Replace("24000", "25000", StringComparison.Ordinal)); // on no listed design
        Assert.Equal(list["ETag"], (await studio.Get("/v1/price-list?channel=web", check))["ETag"]);
        (await studio.Get("/v1/price-list", await studio.ClientFor("verdict"))).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task A_known_and_an_unknown_design_are_looked_up_in_the_same_memory()
    {
        // No time is measured: the store is taken away, and both are still answered. Neither way reads the store, so neither takes longer.
        await using var studio = await AShop();
        using var check = await studio.ClientFor("check");
        const string Known = "/v1/price-checks?sku=RB-014&channel=web&price=58", Unknown = "/v1/price-checks?sku=RB-O14&channel=web&price=58";
        Assert.Equal((200, 422), ((await studio.Get(Known, check)).Status, (await studio.Get(Unknown, check)).Status));
        SqliteConnection.ClearAllPools();
        foreach (var file in Directory.EnumerateFiles(studio.Folder, "pricefloor.db*"))
            File.Delete(file);
        Assert.Equal((200, 422), ((await studio.Get(Known, check)).Status, (await studio.Get(Unknown, check)).Status));
    }

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/dear", """{"sells":"retail","currency":"USD","costPerPiece":1000000000000}""");
        await studio.Has("/v1/channels/euro", """{"sells":"retail","currency":"EUR"}""");
        return studio;
    }
}
