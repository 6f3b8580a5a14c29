using Microsoft.AspNetCore.Hosting;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Audit;

/// <summary>Who changed what: read from the revisions themselves, so the two cannot differ.</summary>
public sealed class AuditTests
{
    private static readonly string[] s_figures = ["24000", "58", "pf_", "USD"];

    [Fact]
    public async Task Every_change_is_there_with_its_author_the_newest_first()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        using var shop =
            studio.ClientWith((await studio.Post("/v1/keys", """{"name":"shop","scopes":["prices"]}""")).Json.GetProperty("key").GetString());
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":59.00}""", shop);
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":59.00}""", shop); // says the same: no change
        await studio.Send("POST", "/v1/keys/shop/rotation", null);
        await studio.Delete("/v1/designs/RB-014");
        await studio.Has("/v1/designs/RB-014", Sample.Pendant);
        await studio.Delete("/v1/keys/shop");

        Assert.Equal(
        [
            "first-admin-key deleted key shop ",
            "first-admin-key created design RB-014 3",
            "first-admin-key deleted design RB-014 2",
            "first-admin-key deleted price RB-014/web 3", // deleted with its design
            "first-admin-key rotated key shop ",
            "shop changed price RB-014/web 2",
            "first-admin-key created key shop ",
            "first-admin-key created price RB-014/web 1",
            "first-admin-key created channel web 1",
            "first-admin-key created design RB-014 1",
            "first-admin-key created profile main 1",
            "first-start created key first-admin-key ",
        ], (await Lines(studio, "/v1/audit")).Lines);
    }

    [Fact]
    public async Task Batches_are_listed_document_by_document_under_the_key_that_sent_them()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        using var writer =
            studio.ClientWith((await studio.Post("/v1/keys", """{"name":"importer","scopes":["write"]}""")).Json.GetProperty("key").GetString());
        await studio.Post("/v1/designs/batch",
            """[{"key":"A","profile":"main","making":{"piecesPerDay":4}},{"key":"B","profile":"main","making":{"piecesPerDay":4}}]""", writer);
        await studio.Post("/v1/listed-prices/batch", """[{"sku":"A","channel":"web","price":58}]""", writer);
        Assert.Equal(["importer created price A/web 1", "importer created design B 1", "importer created design A 1"],
            (await Lines(studio, "/v1/audit?limit=3")).Lines);
    }

    [Fact]
    public async Task Backups_are_in_it_under_the_key_the_schedule_or_the_command_line()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_BACKUP_EVERY_HOURS", "24"));
        _ = studio.ClientWith(null);
        for (var tries = 0; tries < 100
                && (await Lines(studio, "/v1/audit?limit=1")).Lines is not ["timed backup backed-up store pricefloor-20270102T090000Z.db "]; tries++)
            await Task.Delay(50, Studio.Cancellation);
        using var keeper =
            studio.ClientWith((await studio.Post("/v1/keys", """{"name":"keeper","scopes":["admin"]}""")).Json.GetProperty("key").GetString());
        studio.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Equal(201, (await studio.Send("POST", "/v1/backups", null, keeper)).Status);
        Verb(studio.Folder, "backup", Path.Combine(studio.Folder, "monday.db")); // beside the service
        Assert.Equal(
        [
            "command line backed-up store monday.db ",
            "keeper backed-up store pricefloor-20270102T100000Z.db ",
            "first-admin-key created key keeper ",
            "timed backup backed-up store pricefloor-20270102T090000Z.db ",
            "first-start created key first-admin-key ",
        ], (await Lines(studio, "/v1/audit")).Lines);
    }

    [Fact]
    public async Task A_restored_store_tells_so_above_what_the_backup_told()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        var folder = studio.Folder;
        Verb(folder, "backup", Path.Combine(folder, "monday.db"));
        await studio.Has("/v1/profiles/late", Sample.SmallProfile);
        await studio.Stopped();
        Verb(folder, "restore", Path.Combine(folder, "monday.db"));
        await using var again = await studio.Restarted();
        Assert.Equal(
        [
            "command line restored store monday.db ",
            "first-admin-key created profile main 1",
            "first-start created key first-admin-key ",
        ], (await Lines(again, "/v1/audit")).Lines); // the backup was recorded after it was made
    }

    [Fact]
    public async Task A_forgotten_document_is_listed_without_its_key()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/SECRET-7", Sample.Pendant);
        await studio.Delete("/v1/designs/SECRET-7");
        var folder = await studio.Stopped();
        Verb(folder, "forget", "design", "SECRET-7");
        await using var again = await studio.Restarted();
        var (lines, _) = await Lines(again, "/v1/audit?limit=2");
        Assert.Equal(["command line forgotten design  ", "first-admin-key created price RB-014/web 1"], lines);
        Assert.DoesNotContain("SECRET-7", (await again.Get("/v1/audit")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_backup_of_a_store_that_cannot_be_written_is_made_and_says_that_the_trail_is_silent()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        using var held = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False");
        held.Open();
        using var writing = held.BeginTransaction(deferred: false); // blocks all other writers, not readers
        Assert.Contains("The trail (/v1/audit) does not list it", Verb(studio.Folder, "backup", Path.Combine(studio.Folder, "monday.db")),
            StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(studio.Folder, "monday.db")));
    }

    [Fact]
    public async Task It_is_paged_like_other_lists_and_what_comes_meanwhile_moves_nothing()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        foreach (var name in new[] { "a", "b", "c" })
        {
            await studio.Post("/v1/keys", $$"""{"name":"{{name}}","scopes":["read"]}""");
            await studio.Has($"/v1/profiles/{name}", Sample.SmallProfile);
        }

        var whole = (await Lines(studio, "/v1/audit")).Lines;
        Assert.Equal(11, whole.Count); // the first key, four documents, three keys and three profiles
        foreach (var limit in new[] { 1, 2, 3, 5, 10, 11 })
        {
            var (read, path) = (new List<string>(), (string?)$"/v1/audit?limit={limit}");
            while (path is not null)
            {
                var (lines, link) = await Lines(studio, path);
                Assert.InRange(lines.Count, 1, limit);
                read.AddRange(lines);
                path = link;
                if (read.Count == limit && limit == 5)
                    await studio.Has("/v1/profiles/late", Sample.SmallProfile);
            }

            Assert.Equal(limit == 10 || limit == 11 ? ["first-admin-key created profile late 1", .. whole] : whole, read);
        }
    }

    [Theory]
    [InlineData("x")]
    [InlineData("1")]
    [InlineData("1.2.3")]
    [InlineData("-1.2")]
    public async Task A_place_that_is_none_is_refused(string after)
    {
        await using var studio = new Studio();
        Assert.Equal(["after"], (await studio.Get($"/v1/audit?after={after}")).IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task Nothing_of_a_document_is_in_it()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = await studio.Get("/v1/audit");
        Assert.All(s_figures, figure => Assert.DoesNotContain(figure, answer.Text, StringComparison.Ordinal));
        Assert.Equal("no-cache, private", answer["Cache-Control"]);
    }

    private static string Verb(string folder, params string[] words)
    {
        using var output = new StringWriter();
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["PRICEFLOOR_DATA"] = folder }).Build();
        Assert.Equal(0, StoreCommands.Run(words[0], words[1..], configuration, output));
        return output.ToString();
    }

    private static async Task<(IReadOnlyList<string> Lines, string? Next)> Lines(Studio studio, string path)
    {
        var answer = await studio.Get(path);
        Assert.True(answer.Status == 200, answer.Text);
        var next = answer.Json.GetProperty("next").GetString();
        Assert.Equal(next is null, answer["Link"] is null);
        var link = answer["Link"]?[1..answer["Link"]!.IndexOf('>', StringComparison.Ordinal)];
        string Of(System.Text.Json.JsonElement item, string name) => item.TryGetProperty(name, out var value) ? value.ToString() : "";
        return ([.. answer.Json.GetProperty("items").EnumerateArray()
            .Select(item => $"{Of(item, "by")} {Of(item, "action")} {Of(item, "kind")} {Of(item, "key")} {Of(item, "revision")}")], link);
    }
}
