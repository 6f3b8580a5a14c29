using Xunit;
using static PriceFloor.Storage.Tests.Sqlite.StoreFile;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Restoring: the backup is back, the replaced store is kept, and a file that is not a backup changes nothing.</summary>
public sealed class StoreRestoreTests : StoreInAFolder
{
    [Fact]
    public void A_restore_brings_back_the_backup_and_keeps_what_it_replaced()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        Save("a", "2");
        Close();
        var done = Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow());
        Assert.Equal(At("pricefloor.db.replaced-20270102T090000Z"), done.Replaced);
        Assert.Equal(["1"], Bodies(Db));
        Assert.Equal(["1", "2"], Bodies(done.Replaced!));
        Assert.Equal(At("pricefloor.db.replaced-20270102T090000Z-2"), Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow()).Replaced);
        Assert.Equal("1", Open().Read(snapshot => snapshot.Find("design", "a"))!.Body);
    }

    [Fact]
    public void A_restore_goes_over_a_broken_store_and_into_an_empty_folder()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        Close();
        File.WriteAllText(Db, "broken");
        File.WriteAllText(Db + "-wal", "broken too");
        var replaced = Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow()).Replaced!;
        Assert.Equal("broken", File.ReadAllText(replaced));
        Assert.Equal(["1"], Bodies(Db));
        Directory.CreateDirectory(At("new"));
        Assert.Null(Restoring.Restore(At("copy.db"), At("new/pricefloor.db"), Clock.GetUtcNow()).Replaced);
        Assert.Equal(["1"], Bodies(At("new/pricefloor.db")));
    }

    [Fact]
    public void A_restore_that_was_killed_leaves_nothing_for_long_and_one_of_an_unreadable_file_says_so()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        Close();
        File.WriteAllText(At("pricefloor.db.restoring-0"), "half");
        Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow());
        Assert.Empty(Directory.GetFiles(Folder, "*.restoring-*"));
        using var held = new FileStream(At("copy.db"), FileMode.Open, FileAccess.Read, FileShare.None);
        Assert.Contains($"{At("copy.db")} cannot be read",
            Assert.Throws<StoreException>(() => Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_copy_of_a_store_in_use_is_not_restored_without_its_log_and_with_it_by_way_of_a_backup()
    {
        Save("a", "1");
        Close();
        Save("a", "2"); // in the log only
        Directory.CreateDirectory(At("copied"));
        foreach (var suffix in new[] { "", "-wal" })
            File.Copy(Db + suffix, At("copied/pricefloor.db") + suffix);
        Save("a", "3");
        Close();
        var refused = Assert.Throws<StoreException>(() => Restoring.Restore(At("copied/pricefloor.db"), Db, Clock.GetUtcNow())).Message;
        Assert.Contains(At("copied/pricefloor.db-wal"), refused, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", refused, StringComparison.Ordinal);
        Assert.Equal(["1", "2", "3"], Bodies(Db));

        var other = Backup.Make(At("copied/pricefloor.db"), At("other.db")).Path;
        Restoring.Restore(other, Db, Clock.GetUtcNow());
        Assert.Equal(["1", "2"], Bodies(Db));
        File.WriteAllText(other + "-wal", ""); // nothing is in it
        Restoring.Restore(other, Db, Clock.GetUtcNow());
    }

    [Theory]
    [InlineData("cut")]
    [InlineData("cut, without its hash")]
    [InlineData("one byte")]
    [InlineData("alien")]
    [InlineData("newer")]
    [InlineData("missing")]
    public void A_backup_that_is_not_one_changes_nothing(string trouble)
    {
        for (var i = 0; i < 50; i++)
            Save("a", $"\"{new string('y', 900)}{i}\"");
        var copy = Backup.Make(Db, At("copy.db")).Path;
        var bytes = File.ReadAllBytes(copy);
        if (trouble is not ("cut" or "one byte"))
            File.Delete(copy + ".sha256");
        switch (trouble)
        {
            case "cut" or "cut, without its hash":
                File.WriteAllBytes(copy, bytes[..(bytes.Length / 2 / 4096 * 4096)]);
                break;
            case "one byte":
                bytes[^100] ^= 1;
                File.WriteAllBytes(copy, bytes);
                break;
            case "alien":
                File.Delete(copy);
                Execute(copy, "CREATE TABLE letters (x); PRAGMA user_version = 1");
                break;
            case "newer":
                Execute(copy, $"PRAGMA user_version = {Migrations.Newest + 1}");
                break;
            default:
                File.Delete(copy);
                break;
        }

        Close();
        var before = File.ReadAllBytes(Db);
        Assert.Contains(copy, Assert.Throws<StoreException>(() => Restoring.Restore(copy, Db, Clock.GetUtcNow())).Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Db));
        Assert.Empty(Directory.GetFiles(Folder, "*.re*"));
    }

    [Fact]
    public void After_a_restore_another_life_begins_whose_numbers_are_higher_than_any_that_was_given()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        for (var i = 2; i <= 5; i++)
            Save("a", $"{i}");
        var life = Opened.LifeName;
        Close();
        Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow());
        Assert.NotEqual(life, Open().LifeName);
        Assert.Equal(6, Save("a", "6").Number); // 5 was given in the store that was replaced
        Close();
        Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow());
        Assert.Equal(7, (Open(), Save("a", "7")).Item2.Number); // 6 was given in the second life
        Close();
        File.Delete(Db);
        Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow());
        Assert.Equal(1008, (Open(), Save("a", "8")).Item2.Number); // the 7 of the note that was left, a leap of 1000, the next
        Close();
        File.Delete(Db);
        File.Delete(Db + ".highwater");
        Restoring.Restore(At("copy.db"), Db, Clock.GetUtcNow());
        Assert.Equal(1002, (Open(), Save("a", "9")).Item2.Number); // the backup's 1, a leap of 1000, the next
    }
}
