using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Storage;
using PriceFloor.Storage.Postgres;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The service on a database of PostgreSQL: the same answers, and what it leaves to the server it refuses in words.</summary>
public sealed class StoreOnServerTests : IDisposable
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly string _database, _folder = Directory.CreateTempSubdirectory("pricefloor-server-").FullName;

    public StoreOnServerTests() => _database = _cluster.NewDatabase();

    private string Connection => _cluster.ConnectionString(_database);

    public void Dispose()
    {
        _cluster.Drop(_database);
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task It_answers_as_one_in_a_file_does_and_goes_on_after_a_restart()
    {
        await using var inFile = new Studio();
        await inFile.HasASmallShop();
        await using var first = new Studio(configure: OnServer);
        await first.HasASmallShop();
        foreach (var (path, body) in new[]
        {
            ("/v1/movements/batch", Sold), ("/v1/floor-prices", """{"design":"RB-014"}"""),
            ("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":58.00}"""),
        })
            Same(await inFile.Post(path, body), await first.Post(path, body));
        foreach (var path in new[] { "/v1/designs", "/v1/designs/RB-014/revisions", "/v1/price-list?channel=web", "/v1/audit", "/v1/movements",
            "/v1/designs/RB-014/evidence" })
            Same(await inFile.Get(path), await first.Get(path));
        Assert.Equal("60.00", (await first.Post("/v1/floor-prices", """{"design":"RB-014"}""")).Json.GetProperty("floor").GetRawText());

        var cursor = (await first.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        await using var again = await first.Restarted(OnServer);
        await again.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":2}}""");
        var changed = (await again.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items");
        Assert.Equal("120.00", (await again.Post("/v1/floor-prices", """{"design":"RB-014"}""")).Json.GetProperty("floor").GetRawText());
        Assert.Equal("RB-014", changed[0].GetProperty("sku").GetString());
        Assert.Equal(200, (await again.Get("/health/ready", again.ClientWith(null))).Status);
        Assert.DoesNotContain(Directory.GetFiles(again.Folder), file => file.EndsWith(".db", StringComparison.Ordinal));
    }

    /// <summary>Of an earlier moment the documents of the one design are read, and no other design.</summary>
    [Fact]
    public async Task A_floor_of_an_earlier_moment_is_what_was_answered_then()
    {
        await using var studio = new Studio(configure: OnServer);
        await studio.HasTheWorkedStudio();
        var documents = await WorkedStudio.Documents();
        var skus = documents["designs"]!.AsObject().Select(one => one.Key).ToList();
        var then = new List<string>();
        foreach (var sku in skus)
            then.Add((await studio.Get($"/v1/designs/{sku}/floor-price")).Text);
        Assert.Contains(then, answer => answer.Contains("\"listedPrice\"", StringComparison.Ordinal));

        studio.Clock.Advance(TimeSpan.FromDays(1));
        var moment = $"{studio.Clock.GetUtcNow():yyyy-MM-ddTHH:mm:ssZ}";
        studio.Clock.Advance(TimeSpan.FromDays(1));
        foreach (var (key, profile) in documents["profiles"]!.AsObject())
        {
            profile!["expenses"]![0]!["amount"] = 999;
            await studio.Has($"/v1/profiles/{key}", profile.ToJsonString());
        }

        foreach (var (key, channel) in documents["channels"]!.AsObject())
        {
            channel!["name"] = "Another";
            await studio.Has($"/v1/channels/{key}", channel.ToJsonString());
        }

        foreach (var (sku, answered) in skus.Zip(then))
        {
            Assert.NotEqual(answered, (await studio.Get($"/v1/designs/{sku}/floor-price")).Text);
            Assert.Equal(answered, (await studio.Get($"/v1/designs/{sku}/floor-price?asOf={moment}")).Text);
        }
    }

    [Fact]
    public async Task Verbs_work_while_it_serves_and_it_goes_on_with_what_they_left()
    {
        await using var studio = new Studio(configure: OnServer);
        await studio.HasASmallShop();
        var cursor = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        await studio.Delete("/v1/designs/RB-014/prices/web");
        var tag = (await studio.Get("/v1/designs/RB-014"))["ETag"]!;
        await studio.Delete("/v1/designs/RB-014");
        Assert.Contains("All is well.", Verb("check-store"), StringComparison.Ordinal);
        Assert.Contains("revisions are erased", Verb("forget", "design", "RB-014"), StringComparison.Ordinal);
        Assert.Equal(404, (await studio.Get("/v1/designs/RB-014/revisions")).Status);
        var refused = await studio.Get($"/v1/floor-changes?since={cursor}");
        Assert.Equal(422, refused.Status);
        Assert.Contains("unknown-cursor", refused.Text, StringComparison.Ordinal);
        Assert.Equal(412, (await studio.Put("/v1/designs/RB-014", Sample.Pendant, headers: ("If-Match", tag))).Status);
        Assert.Contains("A key with every scope is in", Verb("new-admin-key"), StringComparison.Ordinal);
        var made = File.ReadAllText(Directory.GetFiles(_folder, "admin-key-*").Single()).Trim();
        Assert.Equal(200, (await studio.Get("/v1/designs", studio.ClientWith(made))).Status);
    }

    [Fact]
    public async Task One_whose_connections_were_cut_goes_on_by_itself()
    {
        await using var studio = new Studio(configure: OnServer);
        await studio.HasASmallShop();
        CutConnections();
        await IsServedAgain(studio);
        Assert.Equal("60.00", (await studio.Post("/v1/floor-prices", """{"design":"RB-014"}""")).Json.GetProperty("floor").GetRawText());
    }

    [Fact]
    public async Task A_server_that_is_not_there_at_the_start_is_waited_for()
    {
        _cluster.Run("postgres", "postgres", $"ALTER DATABASE {_database} ALLOW_CONNECTIONS false");
        await using var studio = new Studio(configure: OnServer);
        Assert.Equal(200, (await studio.Get("/health/live", studio.ClientWith(null))).Status);
        Assert.Equal(503, (await studio.Get("/health/ready", studio.ClientWith(null))).Status);
        var refused = await studio.Get("/v1/designs");
        refused.IsProblem(503, "busy");
        Assert.NotNull(refused["Retry-After"]);
        _cluster.Run("postgres", "postgres", $"ALTER DATABASE {_database} ALLOW_CONNECTIONS true");
        for (var tries = 0; (await studio.Get("/v1/designs")).Status != 200; tries++)
        {
            Assert.True(tries < 100, "It does not serve.");
            await Task.Delay(TimeSpan.FromMilliseconds(100), Studio.Cancellation);
        }

        Assert.Equal(200, (await studio.Get("/health/ready", studio.ClientWith(null))).Status);
    }

    [Fact]
    public async Task Verbs_work_on_it_or_say_whose_work_it_is()
    {
        await using (var studio = new Studio(configure: OnServer))
        {
            await studio.HasASmallShop();
            await studio.Delete("/v1/designs/RB-014/prices/web");
            await studio.Delete("/v1/designs/RB-014");
            var backup = (await studio.Post("/v1/backups", "")).IsProblem(403, "key-not-allowed");
            Assert.Contains("pg_dump", backup.Text, StringComparison.Ordinal);
            Assert.Null(backup["Retry-After"]);
            await studio.Stopped();
        }

        Assert.Contains("schema 4 of 4, 2 documents, 6 revisions, position 6", Verb("check-store"), StringComparison.Ordinal);
        Assert.Contains("4 revisions are erased, those of its listed prices included, with its lines in the log, and what the server still has",
            Verb("forget", "design", "RB-014"), StringComparison.Ordinal);
        Assert.Contains("A key with every scope is in", Verb("new-admin-key"), StringComparison.Ordinal);
        Assert.Contains("pg_dump", Assert.Throws<StoreException>(() => Verb("backup", Path.Combine(_folder, "b.db"))).Message,
            StringComparison.Ordinal);
        Assert.Contains("pg_restore", Assert.Throws<StoreException>(() => Verb("restore", Path.Combine(_folder, "b.db"))).Message,
            StringComparison.Ordinal);
        Assert.Contains("2 documents, 2 revisions", Verb("check-store"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_owner_migrates_and_another_role_serves()
    {
        var empty = _cluster.NewDatabase(isMigrated: false);
        var asOwner = Of(("PRICEFLOOR_STORE", _cluster.ConnectionString(empty, PostgresCluster.Owner)));
        using var output = new StringWriter();
        for (var times = 0; times < 2; times++)
            Assert.Equal(0, StoreCommands.Run("migrate", [], asOwner, output));
        Assert.EndsWith($"{empty} has schema {StoreOnServer.Schema}.{Environment.NewLine}", output.ToString(), StringComparison.Ordinal);
        await using (var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_STORE", _cluster.ConnectionString(empty))))
            await studio.HasASmallShop();
        _cluster.Drop(empty);
    }

    [Fact]
    public void Backups_by_the_hour_are_refused_at_the_start() => Assert.Contains("PRICEFLOOR_BACKUP_EVERY_HOURS",
        Assert.Throws<SettingsException>(() => Settings.Read(Of(("PRICEFLOOR_BACKUP_EVERY_HOURS", "24")), demo: false)).Message,
        StringComparison.Ordinal);

    private const string Sold =
        """[{"source":"web-shop","ref":"10231/1","on":"2026-12-14","sku":"RB-014","channel":"web","order":"10231","what":"sold","pieces":1,"price":52}]""";

    private static void Same(Answer inFile, Answer onServer)
    {
        Assert.Equal((200, inFile.Text), (inFile.Status, onServer.Text));
        Assert.Equal(inFile["ETag"], onServer["ETag"]);
    }

    private void CutConnections() => _cluster.Run("postgres", "postgres",
        $"SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '{_database}'");

    /// <summary>Until then each refusal is a 503.</summary>
    private static async Task IsServedAgain(Studio studio)
    {
        for (var tries = 0; tries < 100; tries++)
        {
            var answer = await studio.Put("/v1/designs/RB-014", Sample.Pendant);
            studio.Clock.Advance(TimeSpan.FromSeconds(5));
            if (answer.Status == 200 && (await studio.Get("/health/ready", studio.ClientWith(null))).Status == 200)
                return;
            if (answer.Status != 200)
                answer.IsProblem(503, "busy");
        }

        Assert.Fail("It does not serve again.");
    }

    private void OnServer(IWebHostBuilder host) => host.UseSetting("PRICEFLOOR_STORE", Connection);

    private string Verb(params string[] words)
    {
        using var output = new StringWriter();
        Assert.Equal(0, StoreCommands.Run(words[0], words[1..], Of(), output));
        return output.ToString();
    }

    private IConfiguration Of(params (string Name, string Value)[] more) => new ConfigurationBuilder()
        .AddInMemoryCollection([new("PRICEFLOOR_DATA", _folder), new("PRICEFLOOR_STORE", Connection)])
        .AddInMemoryCollection(more.Select(one => new KeyValuePair<string, string?>(one.Name, one.Value))).Build();
}
