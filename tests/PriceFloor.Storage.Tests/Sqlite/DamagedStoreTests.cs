using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A file that is not a store, is damaged, or is missing.</summary>
public sealed class DamagedStoreTests : StoreInTrouble
{
    [Fact]
    public void A_file_that_holds_something_else_is_damaged_whichever_way_it_is_used()
    {
        using var store = new Store(new SqliteEngine(Db, Clock), Clock);
        File.WriteAllText(Db, new string('x', 8192));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Body(store, "a")));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Save(store, "a", "1")));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => store.MarkAt(1).AtOnce()));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => store.Open()));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Backup.Make(Db, At("copy.db"))));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => StoreCheck.Of(Db, (_, _) => null)));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Forgetting.Forget(Db, "design", "a", Clock.GetUtcNow())));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Restoring.Restore(Db, At("other.db"), Clock.GetUtcNow())));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Migrations.Apply(Db, 1)));
    }

    [Fact]
    public void A_store_with_a_spoilt_page_is_damaged_for_who_reads_it_and_no_backup_is_kept_of_it()
    {
        NewStore().Dispose();
        var pagesOfTheSchema = new FileInfo(Db).Length / 4096;
        using (var store = NewStore())
            for (var i = 0; i < 200; i++)
                Save(store, $"D-{i}", new string('x', 500));
        using (var file = new FileStream(Db, FileMode.Open, FileAccess.Write))
            for (var page = pagesOfTheSchema; page < file.Length / 4096; page++)
            {
                file.Position = page * 4096;
                file.WriteByte(0xEE); // not a valid kind of page
            }

        using var spoilt = new Store(new SqliteEngine(Db, Clock), Clock);
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => spoilt.Read(snapshot => snapshot.All(long.MaxValue))));
        Assert.Equal(StoreTrouble.Damaged, TroubleOf(() => Save(spoilt, "D-1", "1")));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => Backup.Make(Db, At("copy.db"))));
        Assert.Equal(StoreTrouble.Damaged, StoppedBy(() => spoilt.Open()));
        Assert.NotEmpty(StoreCheck.Of(Db, (_, _) => null).Faults);
    }

    [Fact]
    public void A_store_that_is_not_there_cannot_be_opened()
    {
        var nowhere = At("nowhere/pricefloor.db");
        using var store = new Store(new SqliteEngine(nowhere, Clock), Clock);
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Body(store, "a")));
        Assert.Equal(StoreTrouble.CannotOpen, TroubleOf(() => Save(store, "a", "1")));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => Backup.Make(nowhere, At("copy.db"))));
        Assert.Equal(StoreTrouble.CannotOpen, StoppedBy(() => StoreCheck.Of(nowhere, (_, _) => null)));
    }
}
