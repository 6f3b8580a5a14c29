using PriceFloor.Api.Tests.Running;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store on a disk that is full, became read-only, or loses data.</summary>
public sealed class FailingDiskTests : StoreInTrouble
{
    [Fact]
    public void A_full_disk_stops_writes_and_backups_and_no_reader()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var path = Path.Combine(disk.Path, "pricefloor.db");
        var filler = Path.Combine(disk.Path, "filler");
        File.WriteAllBytes(filler, new byte[200_000]);
        using (var store = NewStore(path))
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
        using var store = NewStore(Path.Combine(disk.Path, "pricefloor.db"));
        Save(store, "small", "1");
        using var holds = new ManualResetEventSlim();
        using var goOn = new ManualResetEventSlim();
        var first = Task.Run(() => store.Write("test", _ =>
        {
            holds.Set();
            return new ValueTask<bool>(goOn.Wait(TimeSpan.FromSeconds(30)));
        }));
        holds.Wait(TestContext.Current.CancellationToken);
        var small = SaveAsync(store, "small", "2");
        var failing = store.WriteAsync<bool>("test", _ => throw new InvalidOperationException("mine"));
        var large = SaveAsync(store, "large", new string('x', 3_000_000));
        goOn.Set();
        Assert.True(await first);
        Assert.Equal("mine", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        Assert.Equal(StoreTrouble.Full, (await Assert.ThrowsAsync<StoreTroubleException>(() => large)).Trouble);
        Assert.Equal(StoreTrouble.Full, (await Assert.ThrowsAsync<StoreTroubleException>(() => small)).Trouble); // the engine rolled all of it back
        Assert.Equal("1", Body(store, "small"));
        Assert.Equal(2, Save(store, "small", "2").Number);
    }

    [Fact]
    public void A_store_on_a_disk_that_became_read_only_is_read_and_not_written()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var path = Path.Combine(disk.Path, "pricefloor.db");
        using (var store = NewStore())
        {
            Save(store, "a", "1");
            foreach (var suffix in new[] { "", "-wal", "-shm" })
                File.Copy(Db + suffix, path + suffix); // as after a kill
        }

        using var again = new Store(new SqliteEngine(path, Clock), Clock);
        disk.BecomesReadOnly();
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => again.Open()));
        Assert.Equal("1", Body(again, "a"));
        Assert.Equal(StoreTrouble.ReadOnly, TroubleOf(() => Save(again, "a", "2")));
        Assert.Equal(StoreTrouble.ReadOnly, TroubleOf(() => again.Probe(TimeSpan.FromSeconds(1)).AtOnce()));
        Assert.True(again.IsRefusingWrites);
        Assert.False(Backup.Tell(path, "copy.db", Clock.GetUtcNow()));
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => Backup.Make(path, Path.Combine(disk.Path, "copy.db"))));
        Restoring.Restore(Backup.Make(path, At("copy.db")).Path, At("other.db"), Clock.GetUtcNow());
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => Restoring.Restore(At("copy.db"), path, Clock.GetUtcNow())));
    }

    [Fact]
    public void A_store_that_was_closed_on_a_disk_that_became_read_only_cannot_be_opened()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var path = Path.Combine(disk.Path, "pricefloor.db");
        NewStore(path).Dispose();
        using var again = new Store(new SqliteEngine(path, Clock), Clock);
        disk.BecomesReadOnly();
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => again.Open()));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Body(again, "a")));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Save(again, "a", "1")));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Backup.Make(path, At("copy.db"))));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => StoreCheck.Of(path, (_, _) => null)));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => Forgetting.Forget(path, "design", "a", Clock.GetUtcNow())));
        using var below = new Store(new SqliteEngine(Path.Combine(disk.Path, "below", "pricefloor.db"), Clock), Clock);
        Assert.Equal(StoreTrouble.ReadOnly, StoppedBy(() => below.Open()));
    }

    [Fact]
    public void A_log_that_lost_its_end_is_the_disks_fault()
    {
        using var store = NewStore();
        for (var i = 0; i < 50; i++)
            Save(store, $"D-{i}", new string('x', 500));
        using (var log = new FileStream(Db + "-wal", FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
            log.SetLength(100);
        using var other = new Store(new SqliteEngine(At("./pricefloor.db"), Clock), Clock); // the first one has its pages in memory
        Assert.Equal(StoreTrouble.Disk, TroubleOf(() => other.Read(snapshot => snapshot.All(long.MaxValue))));
        Assert.Equal(StoreTrouble.Disk, TroubleOf(() => Save(other, "D-1", "1")));
        Assert.Equal(StoreTrouble.Disk, TroubleOf(() => Backup.Make(Db, At("copy.db"))));
        Assert.Equal(StoreTrouble.Disk, StoppedBy(() => StoreCheck.Of(Db, (_, _) => null)));
    }

    /// <summary>Writes until the disk is full, and returns how many writes were kept.</summary>
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

    private static StoreTrouble? Any(Action act) => Record.Exception(act) switch
    {
        StoreTroubleException trouble => trouble.Trouble,
        StoreException stopped => stopped.Trouble,
        _ => null,
    };
}
