using System.ComponentModel;
using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store that another program has locked.</summary>
public sealed class BusyStoreTests : StoreInTrouble
{
    [Fact]
    public async Task A_store_that_another_program_writes_to_is_busy_for_writers_and_not_for_readers_or_backups()
    {
        using var store = NewStore();
        Save(store, "a", "1");
        using (Held("BEGIN IMMEDIATE"))
        {
            var refused = new Task<StoreTrouble?>[]
            {
                Task.Run<StoreTrouble?>(() => TroubleOf(() => SaveAsync(store, "a", "3").GetAwaiter().GetResult())),
                Task.Run<StoreTrouble?>(() => StoppedBy(() => Forgetting.Forget(Db, "design", "a", Clock.GetUtcNow()))),
                Task.Run<StoreTrouble?>(() => Backup.Tell(Db, "copy.db", Clock.GetUtcNow()) ? null : StoreTrouble.Busy),
            };
            Assert.Equal("1", Body(store, "a"));
            Backup.Make(Db, At("copy.db"));
            Assert.All(await Task.WhenAll(refused), trouble => Assert.Equal(StoreTrouble.Busy, trouble));
            Assert.Equal(StoreTrouble.Busy, TroubleOf(() => store.Probe(TimeSpan.FromMilliseconds(50)).AtOnce()));
            Assert.False(store.IsRefusingWrites);
        }

        Assert.Equal(2, Save(store, "a", "2").Number);
    }

    [Fact]
    public async Task A_store_that_another_program_keeps_to_itself_is_busy_for_everybody()
    {
        using (var store = NewStore())
            Save(store, "a", "1");
        using (Held("PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE"))
        {
            using var store = new Store(new SqliteEngine(Db, Clock), Clock);
            var refused = new Task<StoreTrouble?>[]
            {
                Task.Run<StoreTrouble?>(() => StoppedBy(() => store.Open())),
                Task.Run<StoreTrouble?>(() => TroubleOf(() => Body(store, "a"))),
                Task.Run<StoreTrouble?>(() => TroubleOf(() => Save(store, "a", "2"))),
                Task.Run<StoreTrouble?>(() => TroubleOf(() => Backup.Make(Db, At("copy.db")))),
                Task.Run<StoreTrouble?>(() => StoppedBy(() => StoreCheck.Of(Db, (_, _) => null))),
                Task.Run<StoreTrouble?>(() => StoppedBy(() => Forgetting.Forget(Db, "design", "a", Clock.GetUtcNow()))),
            };
            Assert.All(await Task.WhenAll(refused), trouble => Assert.Equal(StoreTrouble.Busy, trouble));
        }

        Assert.Empty(Directory.GetFiles(Folder, "copy.db*"));
    }

    [Fact]
    public async Task A_connection_that_was_refused_has_its_settings_when_it_is_used_again()
    {
        using (var store = NewStore())
            Save(store, "a", "1");
        using var engine = new SqliteEngine(Db, Clock);
        using (Held("PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE"))
            Assert.Equal(StoreTrouble.Busy, TroubleOf(() => engine.BeginReading().AtOnce()));
        await using var session = await engine.BeginReading();
        Assert.Equal(5000, await session.ExecuteScalar<long>("PRAGMA busy_timeout"));
    }

    /// <summary>
    /// On a starved machine a connection can lose every race for a lock of the write-ahead log. SQLite then gives up with SQLITE_PROTOCOL after
    /// about ten seconds (sqlite.org/rescode.html#protocol). Another process that keeps those locks (bytes 123 to 127 of the -shm file,
    /// sqlite.org/walformat.html#the_wal_index_file_format) makes it lose.
    /// </summary>
    [Fact]
    public void A_connection_that_loses_every_race_for_a_lock_finds_the_store_busy()
    {
        using var store = NewStore();
        Save(store, "a", "1");
        using (var other = LockedByAnother(Db + "-shm", from: 123, bytes: 5))
        {
            var busy = Assert.Throws<StoreTroubleException>(() => Save(store, "a", "2"));
            Assert.Equal((StoreTrouble.Busy, 15), (busy.Trouble, Assert.IsType<SqliteException>(busy.InnerException).SqliteErrorCode));
            other.Kill();
            other.WaitForExit();
        }

        Assert.Equal(2, Save(store, "a", "2").Number);
    }

    private static Process LockedByAnother(string path, int from, int bytes)
    {
        var script = $"import fcntl, time; file = open(r'{path}', 'r+b'); fcntl.lockf(file, fcntl.LOCK_EX, {bytes}, {from}); "
            + "print('held', flush=True); time.sleep(60)";
        Process? other = null;
        try
        {
            other = Process.Start(new ProcessStartInfo("python3", ["-c", script]) { RedirectStandardOutput = true, UseShellExecute = false });
        }
        catch (Win32Exception)
        {
            Assert.Skip("There is no python3 here, whose process would hold the lock.");
        }

        Assert.Equal("held", other!.StandardOutput.ReadLine());
        return other;
    }
}
