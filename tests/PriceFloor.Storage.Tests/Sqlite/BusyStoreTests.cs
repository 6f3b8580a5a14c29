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
                Task.Run<StoreTrouble?>(() => Trail.TellOfBackup(Db, "copy.db", Clock.GetUtcNow()) ? null : StoreTrouble.Busy),
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
            using var store = new Store(Engine.InFile(Db, Clock), Clock);
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
}
