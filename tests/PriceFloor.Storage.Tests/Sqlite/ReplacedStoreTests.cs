using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store that somebody put in the place of another by hand is recognised by the note beside it, and begins another life.</summary>
public sealed class ReplacedStoreTests : StoreWithANote
{
    [Fact]
    public void An_older_file_in_its_place_begins_another_life_above_all_that_was_given()
    {
        Save("a");
        CopyTo("older.db");
        var life = Open().LifeName;
        Save("a");
        Save("a");
        PutInPlace("older.db");
        Assert.NotEqual(life, Open().LifeName);
        Assert.Equal("the one served here last had come to position 3, this one only to 1", Opened.WhyAnotherLife);
        Assert.Equal(1004, Save("a").Number); // 3 was given, a leap of 1000, the next
        Close();
        Assert.Null(Open().WhyAnotherLife);
        Assert.Equal(1005, Save("a").Number);
    }

    /// <summary>A snapshot of the whole folder brings the note back too. But its file is a new one: it was made when it was copied there.</summary>
    [Fact]
    public void An_older_folder_in_its_place_begins_another_life()
    {
        Save("a");
        Close();
        Assert.SkipWhen(File.ReadAllText(Note).Contains("born unknown", StringComparison.Ordinal),
            "this file system does not keep when a file was made");
        File.Copy(Db, At("kept.db"));
        File.Copy(Note, At("kept.note"));
        var life = Open().LifeName;
        Save("a");
        Close();
        File.Delete(Db);
        File.Delete(Note);
        File.Copy(At("kept.db"), Db);
        File.Copy(At("kept.note"), Note);
        Assert.NotEqual(life, Open().LifeName);
        Assert.StartsWith("it is a copy", Opened.WhyAnotherLife, StringComparison.Ordinal);
        Assert.Equal(1002, Save("a").Number); // 1 was given as the note knows, a leap of 1000, the next: the lost 2 matches nothing
        Close();
        Assert.Null(Open().WhyAnotherLife);
    }

    [Fact]
    public void An_older_file_that_was_written_on_elsewhere_is_known_at_the_same_position_and_beyond()
    {
        foreach (var writesElsewhere in new[] { 2, 3 })
        {
            Save("a");
            CopyTo("older.db");
            Open();
            Save("a");
            Save("a");
            Close();
            using (var elsewhere = new Store(new SqliteEngine(At("older.db"), Clock), Clock))
            {
                elsewhere.Open();
                Clock.Advance(TimeSpan.FromHours(1));
                for (var i = 0; i < writesElsewhere; i++)
                    elsewhere.Write("test", writing => writing.Save("design", "a", "2", []));
            }

            var life = LifeIn(Note);
            PutInPlace("older.db");
            Assert.NotEqual(life, Open().LifeName);
            Assert.StartsWith("at position ", Opened.WhyAnotherLife, StringComparison.Ordinal);
            Close();
            File.Delete(Db);
            File.Delete(Note);
        }
    }

    [Fact]
    public void A_new_store_in_the_place_of_one_that_was_lost_gives_none_of_its_numbers()
    {
        Save("a");
        Close();
        File.Delete(Db);
        Assert.Equal("the one served here last had another life", Open().WhyAnotherLife);
        Assert.Equal(1002, Save("a").Number);
    }

    [Theory]
    [InlineData("restore")]
    [InlineData("forget")]
    public void A_verb_on_a_store_that_was_put_in_place_by_hand_gives_none_of_the_lost_numbers(string verb)
    {
        Save("a");
        Opened.Write("test", writing => writing.Delete("design", "a"));
        CopyTo("older.db");
        Open();
        for (var i = 0; i < 5; i++)
            Save("b");
        PutInPlace("older.db");
        if (verb == "forget")
            Forgetting.Forget(Db, "design", "a", Clock.GetUtcNow());
        else
            Restoring.Restore(At("older.db"), Db, Clock.GetUtcNow());
        Assert.Null(Open().WhyAnotherLife);
        Assert.Equal(1006, Save("b").Number); // 5 was given, a leap of 1000, the next
    }
}
