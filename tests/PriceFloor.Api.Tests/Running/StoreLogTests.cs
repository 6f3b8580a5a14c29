using Microsoft.Data.Sqlite;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The log has the messages of the store's engine, in its own words.</summary>
public sealed class StoreLogTests
{
    [Fact]
    public async Task What_the_engine_says_is_in_the_log()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        for (var i = 0; i < 100; i++)
            await studio.Has($"/v1/designs/D-{i}", Sample.Pendant);
        var db = Path.Combine(await studio.Stopped(), "pricefloor.db"); // nothing is in the log beside it then
        await using (var unused = new SqliteConnection($"Data Source={db};Pooling=False"))
        {
            await unused.OpenAsync(Studio.Cancellation);
            await using var forget = unused.CreateCommand();
            forget.CommandText = "UPDATE access_key SET last_used = NULL"; // else nothing is to be written within the same minute
            await forget.ExecuteNonQueryAsync(Studio.Cancellation);
        }

        using var service = Start(studio.Folder, []);
        var output = service.Process.StandardOutput.ReadToEndAsync(Studio.Cancellation);
        await Ready(service);
        using var client = new HttpClient();
        client.BaseAddress = new Uri(service.Address);
        client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
        await using (var other = new SqliteConnection($"Data Source={db};Pooling=False"))
        {
            await other.OpenAsync(Studio.Cancellation);
            await using var hold = other.BeginTransaction(deferred: false);
            await using var spoil = other.CreateCommand();
            spoil.CommandText = "ALTER TABLE access_key RENAME TO gone"; // and what the service has in memory of the file is old then
            await spoil.ExecuteNonQueryAsync(Studio.Cancellation);
            Assert.Equal(201, (int)(await client.PostAsync(new Uri("/v1/backups", UriKind.Relative), null, Studio.Cancellation)).StatusCode);
            Assert.Equal(503, (int)(await client.DeleteAsync(new Uri("/v1/designs/D-1", UriKind.Relative), Studio.Cancellation)).StatusCode);
            await hold.CommitAsync(Studio.Cancellation);
        }

        Assert.Equal(500, (int)(await client.DeleteAsync(new Uri("/v1/designs/D-1", UriKind.Relative), Studio.Cancellation)).StatusCode);
        await using (var file = new FileStream(db, FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
            file.SetLength(4096);
        foreach (var path in new[] { "/v1/designs/D-90/revisions", "/v1/audit" })
            Assert.Equal((path, 503), (path, (int)(await client.GetAsync(new Uri(path, UriKind.Relative), Studio.Cancellation)).StatusCode));
        Assert.Equal(0, await Terminate(service));
        foreach (var line in new[]
        {
            "was made, but could not be recorded in the trail: SQLite Error 5: 'database is locked'.",
            "The store answered SQLite Error 5: 'database is locked'.",
            "The store is damaged: SQLite Error 11: 'database disk image is malformed'. Stop the service, run check-store, and restore a backup",
            "The times when keys were last used cannot be written now: SQLite Error 1: 'no such table: access_key'.",
        })
            Assert.True((await output).Contains(line, StringComparison.Ordinal), $"{line} is not in {await output}");
    }
}
