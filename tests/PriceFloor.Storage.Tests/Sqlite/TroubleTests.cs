using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using PriceFloor.Api.Tests.Running;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>What the engine throws leaves the store as a trouble of a kind, with the engine's own exception in it.</summary>
public sealed class TroubleTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-trouble-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    private string Db => Path.Combine(_folder, "pricefloor.db");

    private string At(string name) => Path.Combine(_folder, name);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_store_that_another_program_writes_to_is_busy_for_writers_and_not_for_readers_or_backups()
    {
        using var store = Opened();
        Save(store, "a", "1");
        using (Held("BEGIN IMMEDIATE"))
        {
            var refused = new Task<StoreTrouble?>[]
            {
                Task.Run<StoreTrouble?>(() => TroubleOf(() => SaveAsync(store, "a", "3").GetAwaiter().GetResult())),
                Task.Run<StoreTrouble?>(() => StoppedBy(() => Forgetting.Forget(Db, "design", "a", _clock.GetUtcNow()))),
                Task.Run<StoreTrouble?>(() => Trail.TellOfBackup(Db, "copy.db", _clock.GetUtcNow()) ? null : StoreTrouble.Busy),
            };
            Assert.Equal("1", Body(store, "a"));
            Backup.Make(Db, At("copy.db"));
            Assert.All(await Task.WhenAll(refused), trouble => Assert.Equal(StoreTrouble.Busy, trouble));
            Assert.Equal(StoreTrouble.Busy, TroubleOf(() => store.Probe(TimeSpan.FromMilliseconds(50))));
            Assert.False(store.IsRefusingWrites);
        }

        Assert.Equal(2, Save(store, "a", "2").Number);
    }

    [Fact]
    public async Task A_store_that_another_program_keeps_to_itself_is_busy_for_everybody()
    {
        using (var store = Opened())
            Save(store, "a", "1");
        using (Held("PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE"))
        {
            using var store = new Store(Db, _clock);
            var refused = new Task<StoreTrouble?>[]
            {
                Task.Run<StoreTrouble?>(() => StoppedBy(() => store.Open())),
                Task.Run<StoreTrouble?>(() => TroubleOf(() => Body(store, "a"))),
                Task.Run<StoreTrouble?>(() => TroubleOf(() => Save(store, "a", "2"))),
                Task.Run<StoreTrouble?>(() => TroubleOf(() => Backup.Make(Db, At("copy.db")))),
                Task.Run<StoreTrouble?>(() => StoppedBy(() => StoreCheck.Of(Db, (_, _) => null))),
                Task.Run<StoreTrouble?>(() => StoppedBy(() => Forgetting.Forget(Db, "design", "a", _clock.GetUtcNow()))),
            };
            Assert.All(await Task.WhenAll(refused), trouble => Assert.Equal(StoreTrouble.Busy, trouble));
        }

        Assert.Empty(Directory.GetFiles(_folder, "copy.db*"));
    }

    [Fact]
    public void A_full_disk_stops_writes_and_backups_and_no_reader()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var path = Path.Combine(disk.Path, "pricefloor.db");
        var filler = Path.Combine(disk.Path, "filler");
        File.WriteAllBytes(filler, new byte[200_000]);
        using (var store = Opened(path))
        {
            var number = Fill(store);
            Assert.True(store.IsRefusingWrites);
            Assert.Equal(number, store.Read(snapshot => snapshot.Find("design", "full"))!.Number);
            Assert.Equal(StoreTrouble.Full, Any(() => Backup.Make(path, Path.Combine(disk.Path, "copy.db"))));
            File.Delete(filler);
            Assert.Equal(number + 1, Save(store, "full", "1").Number);
        }

        Assert.Empty(StoreCheck.Of(path, (_, _) => null).Faults);
        Assert.Empty(Directory.GetFiles(disk.Path, "copy.db*"));
    }

    [Fact]
    public async Task On_a_full_disk_each_of_those_who_share_a_commit_gets_its_own_outcome()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        using var store = Opened(Path.Combine(disk.Path, "pricefloor.db"));
        Save(store, "small", "1");
        using var holds = new ManualResetEventSlim();
        using var goOn = new ManualResetEventSlim();
        var first = Task.Run(() => store.Write("test", _ =>
        {
            holds.Set();
            return goOn.Wait(TimeSpan.FromSeconds(30));
        }));
        holds.Wait(TestContext.Current.CancellationToken);
        var small = SaveAsync(store, "small", "2");
        var failing = store.WriteAsync<bool>("test", _ => throw new InvalidOperationException("mine"));
        var large = SaveAsync(store, "large", new string('x', 3_000_000));
        goOn.Set();
        Assert.True(await first);
        Assert.Equal("mine", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        Assert.Equal(StoreTrouble.Full, (await Assert.ThrowsAsync<StoreTroubleException>(() => large)).Trouble);
        Assert.Equal(StoreTrouble.Full, (await Assert.ThrowsAsync<StoreTroubleException>(() => small)).Trouble); // the engine took all of it back
        Assert.Equal("1", Body(store, "small"));
        Assert.Equal(2, Save(store, "small", "2").Number);
    }

    [Fact]
    public void A_store_on_a_disk_that_became_read_only_is_read_and_not_written()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var path = Path.Combine(disk.Path, "pricefloor.db");
        using (var store = Opened())
        {
            Save(store, "a", "1");
            foreach (var suffix in new[] { "", "-wal", "-shm" })
                File.Copy(Db + suffix, path + suffix); // as after a kill
        }

        using var again = new Store(path, _clock);
        disk.BecomesReadOnly();
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => again.Open()));
        Assert.Equal("1", Body(again, "a"));
        Assert.Equal(StoreTrouble.ReadOnly, TroubleOf(() => Save(again, "a", "2")));
        Assert.Equal(StoreTrouble.ReadOnly, TroubleOf(() => again.Probe(TimeSpan.FromSeconds(1))));
        Assert.True(again.IsRefusingWrites);
        Assert.False(Trail.TellOfBackup(path, "copy.db", _clock.GetUtcNow()));
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => Backup.Make(path, Path.Combine(disk.Path, "copy.db"))));
        Restoring.Restore(Backup.Make(path, At("copy.db")).Path, At("other.db"), _clock.GetUtcNow());
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => Restoring.Restore(At("copy.db"), path, _clock.GetUtcNow())));
    }

    [Fact]
    public void A_store_that_was_closed_on_a_disk_that_became_read_only_cannot_be_opened()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var path = Path.Combine(disk.Path, "pricefloor.db");
        Opened(path).Dispose();
        using var again = new Store(path, _clock);
        disk.BecomesReadOnly();
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => again.Open()));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Body(again, "a")));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Save(again, "a", "1")));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Backup.Make(path, At("copy.db"))));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => StoreCheck.Of(path, (_, _) => null)));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => Forgetting.Forget(path, "design", "a", _clock.GetUtcNow())));
        using var below = new Store(Path.Combine(disk.Path, "below", "pricefloor.db"), _clock);
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => below.Open()));
    }

    [Fact]
    public void A_file_that_holds_something_else_is_damaged_whichever_way_it_is_used()
    {
        using var store = new Store(Db, _clock);
        File.WriteAllText(Db, new string('x', 8192));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Body(store, "a")));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Save(store, "a", "1")));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => store.MarkAt(1)));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => store.Open()));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Backup.Make(Db, At("copy.db"))));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => StoreCheck.Of(Db, (_, _) => null)));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Forgetting.Forget(Db, "design", "a", _clock.GetUtcNow())));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Restoring.Restore(Db, At("other.db"), _clock.GetUtcNow())));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Migrations.Apply(Db, 1)));
    }

    [Fact]
    public void A_store_with_a_spoilt_page_is_damaged_for_who_reads_it_and_no_backup_is_kept_of_it()
    {
        using (var store = Opened())
            for (var i = 0; i < 200; i++)
                Save(store, $"D-{i}", new string('x', 500));
        using (var file = new FileStream(Db, FileMode.Open, FileAccess.Write))
            for (var page = 2; page < file.Length / 4096; page++)
            {
                file.Position = page * 4096;
                file.WriteByte(0xEE); // no kind of page that there is
            }

        using var spoilt = new Store(Db, _clock);
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => spoilt.Read(snapshot => snapshot.All(long.MaxValue))));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Save(spoilt, "D-1", "1")));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Backup.Make(Db, At("copy.db"))));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => spoilt.Open()));
        Assert.NotEmpty(StoreCheck.Of(Db, (_, _) => null).Faults);
    }

    [Fact]
    public void A_log_that_lost_its_end_is_the_disks_fault()
    {
        using var store = Opened();
        for (var i = 0; i < 50; i++)
            Save(store, $"D-{i}", new string('x', 500));
        using (var log = new FileStream(Db + "-wal", FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
            log.SetLength(100);
        using var other = new Store(At("./pricefloor.db"), _clock); // the first one has its pages in memory
        Assert.Equal(StoreTrouble.Disk, TroubleOf(() => other.Read(snapshot => snapshot.All(long.MaxValue))));
        Assert.Equal(StoreTrouble.Disk, TroubleOf(() => Save(other, "D-1", "1")));
        Assert.Equal(StoreTrouble.Disk, TroubleOf(() => Backup.Make(Db, At("copy.db"))));
        Assert.Equal(StoreTrouble.Disk, StoppedBy(() => StoreCheck.Of(Db, (_, _) => null)));
    }

    [Fact]
    public void A_store_that_is_not_there_cannot_be_opened()
    {
        using var store = new Store(At("nowhere/pricefloor.db"), _clock);
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Body(store, "a")));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Save(store, "a", "1")));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => Backup.Make(store.Path, At("copy.db"))));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => StoreCheck.Of(store.Path, (_, _) => null)));
    }

    [Fact]
    public void What_the_engine_refuses_for_another_reason_is_unexpected()
    {
        using var store = Opened();
        var key = new StoredKey("shop", [1], "check", 1, null);
        bool Add(Writing writing)
        {
            writing.AddKey(key);
            return true;
        }

        store.Write("test", Add);
        Assert.Equal(StoreTrouble.Unexpected, TroubleOf(() => store.Write("test", Add)));
    }

    [Fact]
    public void Who_reads_or_writes_meets_it_where_it_happens()
    {
        using var store = Opened();
        store.Write("test", writing =>
        {
            writing.AddKey(new StoredKey("shop", [1], "check", 1, null));
            Assert.Equal(StoreTrouble.Unexpected, TroubleOf(() => writing.AddKey(new StoredKey("shop", [2], "check", 1, null))));
            return writing.Save("design", "a", "1", []);
        });
        Assert.Equal("1", Body(store, "a"));
        Assert.Equal([1], Assert.Single(store.Read(snapshot => snapshot.Keys)).Hash);
    }

    [Fact]
    public async Task What_a_reader_or_writer_throws_itself_comes_out_as_it_was_thrown()
    {
        using var store = Opened();
        foreach (var mine in new Exception[] { new InvalidOperationException(), new IOException(), new SqliteException("of another store", 11) })
        {
            Assert.Same(mine, Record.Exception(() => store.Read<bool>(_ => throw mine)));
            Assert.Same(mine, Record.Exception(() => store.Write<bool>("test", _ => throw mine)));
            Assert.Same(mine, await Record.ExceptionAsync(() => store.WriteAsync<bool>("test", _ => throw mine)));
        }

        Assert.Equal((0, false), (store.RefusedWrites, store.IsRefusingWrites));
    }

    private Store Opened(string? path = null)
    {
        var store = new Store(path ?? Db, _clock);
        store.Open();
        return store;
    }

    /// <summary>Another program that has begun this.</summary>
    private SqliteConnection Held(string sql)
    {
        var other = new SqliteConnection($"Data Source={Db};Pooling=False");
        other.Open();
        using var command = other.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
        return other;
    }

    /// <summary>Writes until the disk is full, and says how many were kept.</summary>
    private static long Fill(Store store)
    {
        for (var number = 0; number < 1000; number++)
        {
            StoreTroubleException? full = null;
            try
            {
                Save(store, "full", $"\"{new string('x', 20_000)}\"");
            }
            catch (StoreTroubleException e)
            {
                full = e;
            }

            if (full is null)
                continue;
            Assert.Equal(StoreTrouble.Full, full.Trouble);
            return number;
        }

        throw new InvalidOperationException("The disk never was full.");
    }

    /// <summary>In the middle of work: the engine's words, and its exception.</summary>
    private static StoreTrouble TroubleOf(Action act)
    {
        var trouble = Assert.Throws<StoreTroubleException>(act);
        var engines = Assert.IsType<SqliteException>(trouble.InnerException);
        Assert.Equal(engines.Message, trouble.Message);
        if (trouble.Trouble == StoreTrouble.Busy)
            Assert.Equal(5, engines.SqliteErrorCode);
        return trouble.Trouble;
    }

    /// <summary>Where nothing was begun: what to do about it.</summary>
    private static StoreTrouble? StoppedBy(Action act) => Assert.Throws<StoreException>(act).Trouble;

    private static StoreTrouble? Any(Action act) => Record.Exception(act) switch
    {
        StoreTroubleException trouble => trouble.Trouble,
        StoreException stopped => stopped.Trouble,
        _ => null,
    };

    private static string? Body(Store store, string key) => store.Read(snapshot => snapshot.Find("design", key))?.Body;

    private static Task<Revision> SaveAsync(Store store, string key, string body) =>
        store.WriteAsync("test", writing => writing.Save("design", key, body, []));

    private static Revision Save(Store store, string key, string body) => store.Write("test", writing => writing.Save("design", key, body, []));
}
