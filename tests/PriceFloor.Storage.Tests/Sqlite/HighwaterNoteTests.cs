using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>The note beside a store: when it is written, what it says, and when nothing follows from it.</summary>
public sealed class HighwaterNoteTests : StoreWithANote
{
    [Fact]
    public void A_note_of_a_file_system_that_does_not_keep_when_a_file_was_made_says_nothing_of_it()
    {
        Save("a");
        Close();
        var note = File.ReadAllText(Note);
        Assert.Contains(" born ", note, StringComparison.Ordinal);
        File.WriteAllText(Note, string.Concat(note.AsSpan(0, note.IndexOf(" born ", StringComparison.Ordinal)), " born unknown\n"));
        Assert.Null(Open().WhyAnotherLife);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("life x position 3 mark")]
    [InlineData("life x position -3 mark y number 3")]
    public void Without_a_note_nothing_is_known(string? note)
    {
        Save("a");
        CopyTo("older.db");
        var life = Open().LifeName;
        Save("a");
        PutInPlace("older.db");
        if (note is null)
            File.Delete(Note);
        else
            File.WriteAllText(Note, note);
        Assert.Equal((life, null), (Open().LifeName, Opened.WhyAnotherLife));
        Assert.Equal(2, Save("a").Number);
    }

    [Fact]
    public void A_note_that_a_kill_left_behind_does_not_begin_another_life()
    {
        Save("a");
        Close();
        var behind = File.ReadAllText(Note);
        var life = Open().LifeName;
        Save("a");
        Save("b");
        Close();
        File.WriteAllText(Note, behind);
        Assert.Equal((life, null), (Open().LifeName, Opened.WhyAnotherLife));
        Assert.NotEqual(behind, File.ReadAllText(Note));
        Assert.Contains("position 3 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Assert.Contains("number 2 ", File.ReadAllText(Note), StringComparison.Ordinal);
    }

    [Fact]
    public void The_note_is_written_once_a_second_at_most_and_when_the_store_is_closed()
    {
        Open();
        Save("a");
        Save("a");
        Assert.Contains("position 0 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Contains("position 2 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Save("a");
        Clock.Advance(TimeSpan.FromSeconds(0.9));
        Save("b");
        Assert.Contains("position 2 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Clock.Advance(TimeSpan.FromSeconds(0.1));
        Assert.Contains("position 4 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Save("b");
        Close();
        Assert.Contains("position 5 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Assert.Contains("number 3 ", File.ReadAllText(Note), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Note));
    }

    [Fact]
    public void What_was_undone_is_not_in_the_note()
    {
        Save("a");
        Opened.Write("test", async writing =>
        {
            await writing.Save("design", "a", "2", []);
            writing.Undo();
            return 0;
        });
        Close();
        Assert.Contains("position 1 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Assert.Contains("number 1 ", File.ReadAllText(Note), StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_that_cannot_be_written_hinders_no_write()
    {
        Save("a");
        File.Delete(Note);
        Directory.CreateDirectory(Note);
        Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(2, Save("a").Number);
        Close();
        Directory.Delete(Note);
    }

    [Fact]
    public void Restoring_and_forgetting_rewrite_the_note()
    {
        Save("a");
        var backup = Backup.Make(Db, At("backup.db")).Path;
        Save("a");
        Close();
        Restoring.Restore(backup, Db, Clock.GetUtcNow());
        Assert.Equal((LifeIn(Note), null), (Open().LifeName, Opened.WhyAnotherLife));
        Save("b");
        Opened.Write("test", writing => writing.Delete("design", "a"));
        Close();
        Forgetting.Forget(Db, "design", "a", Clock.GetUtcNow());
        Assert.Equal((LifeIn(Note), null), (Open().LifeName, Opened.WhyAnotherLife));
        Close();
        File.Copy(backup, Db, overwrite: true);
        Assert.Equal("the one served here last had another life", Open().WhyAnotherLife);
    }
}
