using System.Globalization;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// Restore, forget and upgrade, killed at a random moment: the store is as it was before or as it should be after, whole, and running the verb again
/// succeeds. <c>PRICEFLOOR_CRASH_ROUNDS</c> sets how often, each a tenth of that.
/// </summary>
public sealed class KilledVerbTests : IDisposable
{
    private const int Designs = 1500;
    private static readonly int[] s_beforeOrAfterRestore = [1, 2];
    private static readonly int[] s_goneOrWhole = [0, 51];

    private static readonly int s_rounds =
        int.Parse(Environment.GetEnvironmentVariable("PRICEFLOOR_CRASH_ROUNDS") ?? "50", CultureInfo.InvariantCulture) / 10;

    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-killed-").FullName;

    private string Db => Path.Combine(_folder, "pricefloor.db");

    private string Kept => Path.Combine(_folder, "kept");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_restore_puts_all_of_the_backup_in_place_or_nothing()
    {
        using (var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System))
        {
            Fill(store);
            Backup.Make(Db, Path.Combine(_folder, "backup.db"));
            store.Write("test", writing => writing.Save("design", "D-1", "\"later\"", []));
        }

        File.Copy(Db, Kept);
        await KillAgainAndAgain(() => Assert.Contains(Revisions("D-1"), s_beforeOrAfterRestore), "restore", Path.Combine(_folder, "backup.db"));
        Assert.Equal(1, Revisions("D-1"));
        Assert.Empty(Directory.GetFiles(_folder, "*.restoring-*"));
    }

    [Fact]
    public async Task Forgetting_erases_all_of_a_document_or_nothing_and_in_the_end_every_trace()
    {
        using (var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System))
        {
            Fill(store);
            for (var i = 0; i < 50; i++)
                store.Write("test", writing => writing.Save("design", "secret", $"\"an anniversary piece {i} {new string('s', 5000)}\"", []));
            store.Write("test", writing => writing.Delete("design", "secret"));
        }

        File.Copy(Db, Kept);
        await KillAgainAndAgain(() => Assert.Contains(Revisions("secret"), s_goneOrWhole), "forget", "design", "secret");
        File.Delete(Kept);
        foreach (var file in Directory.GetFiles(_folder))
            Assert.Equal(-1,
                (await File.ReadAllBytesAsync(file, Studio.Cancellation)).AsSpan().IndexOf(Encoding.UTF8.GetBytes("an anniversary piece")));
    }

    [Fact]
    public async Task An_upgrade_leaves_the_old_store_or_the_new_one()
    {
        OldStore.Make(Db, schema: 1);
        using (var connection = new SqliteConnection($"Data Source={Db};Pooling=False"))
        {
            connection.Open();
            connection.Execute($"""
                WITH RECURSIVE n (i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < {Designs})
                INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body) SELECT i, 'design', 'D-' || i, 1, 1798880400000000 + i, 'x', '"{new string('t', 5000)}"' FROM n;
                INSERT INTO head (kind, key, position, deleted) SELECT kind, key, position, 0 FROM revision WHERE kind = 'design';
                """);
        }

        File.Copy(Db, Kept);
        await KillAgainAndAgain(() => Assert.Equal(Designs, StoreCheck.Of(Db, (_, _) => null).Revisions));
        using var service = Start(_folder, []);
        await Ready(service);
        Assert.Equal(0, await Terminate(service));
        Assert.Equal((Migrations.Newest, Designs), StoreCheck.Of(Db, (_, _) => null) is var report ? (report.Schema, report.Revisions) : default);
    }

    /// <summary>Starts from the kept store each time; the last time the verb may finish, on the result of the last kill.</summary>
    private async Task KillAgainAndAgain(Action look, params string[] verb)
    {
        for (var round = 1; round <= s_rounds; round++)
        {
            foreach (var file in Directory.GetFiles(_folder, "pricefloor.db*"))
                File.Delete(file);
            File.Copy(Kept, Db);
            using var started = Start(_folder, [], verb);
            await Task.Delay(Random.Shared.Next(150, 700), Studio.Cancellation);
            started.Process.Kill();
            await started.Process.WaitForExitAsync(Studio.Cancellation);
            Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
            look();
        }

        if (verb.Length > 0)
            await RealProgram.Run(_folder, verb);
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
    }

    private static void Fill(Store store)
    {
        store.Open();
        store.Write("test", async writing =>
        {
            for (var i = 1; i <= Designs; i++)
                await writing.Save("design", $"D-{i}", $"\"{new string('t', 5000)}\"", []);
            return true;
        });
    }

    private int Revisions(string key)
    {
        using var connection = new SqliteConnection($"Data Source={Db};Pooling=False");
        connection.Open();
        return connection.ExecuteScalar<int>("SELECT count(*) FROM revision WHERE key = @key", new { key });
    }
}
