using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store that somebody put in the place of another by hand is known by the note beside it, and goes on as another life.</summary>
public sealed class ContinuityTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-continuity-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private Store? _store;

    private string Db => Path.Combine(_folder, "pricefloor.db");

    private string Note => Db + ".highwater";

    private string At(string name) => Path.Combine(_folder, name);

    public void Dispose()
    {
        _store?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

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
        Assert.Equal("the one that was served here last had come to position 3, this one only to 1", _store!.WhyAnotherLife);
        Assert.Equal(1004, Save("a").Number); // 3 was given, a leap of 1000, the next
        Close();
        Assert.Null(Open().WhyAnotherLife);
        Assert.Equal(1005, Save("a").Number);
    }

    /// <summary>A snapshot of the whole folder brings the note back too. The file is another one then: it was made when it was put there.</summary>
    [Fact]
    public void An_older_folder_in_its_place_begins_another_life()
    {
        Save("a");
        Close();
        Assert.SkipWhen(File.ReadAllText(Note).Contains("born unknown", StringComparison.Ordinal), "this file system does not keep when a file was made");
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
        Assert.StartsWith("it is a copy", _store!.WhyAnotherLife, StringComparison.Ordinal);
        Assert.Equal(1002, Save("a").Number); // 1 was given as the note knows, a leap of 1000, the next: the lost 2 matches nothing
        Close();
        Assert.Null(Open().WhyAnotherLife);
    }

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
            using (var elsewhere = new Store(At("older.db"), _clock))
            {
                elsewhere.Open();
                _clock.Advance(TimeSpan.FromHours(1));
                for (var i = 0; i < writesElsewhere; i++)
                    elsewhere.Write("test", writing => writing.Save("design", "a", "2", []));
            }

            var life = LifeIn(Note);
            PutInPlace("older.db");
            Assert.NotEqual(life, Open().LifeName);
            Assert.StartsWith("at position ", _store!.WhyAnotherLife, StringComparison.Ordinal);
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
        Assert.Equal("the one that was served here last had another life", Open().WhyAnotherLife);
        Assert.Equal(1002, Save("a").Number);
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
        Assert.Equal((life, null), (Open().LifeName, _store!.WhyAnotherLife));
        Assert.Equal(2, Save("a").Number);
    }

    [Fact]
    public void A_note_that_a_kill_left_behind_is_no_reason_for_another_life()
    {
        Save("a");
        Close();
        var behind = File.ReadAllText(Note);
        var life = Open().LifeName;
        Save("a");
        Save("b");
        Close();
        File.WriteAllText(Note, behind);
        Assert.Equal((life, null), (Open().LifeName, _store!.WhyAnotherLife));
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
        _clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Contains("position 2 ", File.ReadAllText(Note), StringComparison.Ordinal);
        Save("a");
        _clock.Advance(TimeSpan.FromSeconds(0.9));
        Save("b");
        Assert.Contains("position 2 ", File.ReadAllText(Note), StringComparison.Ordinal);
        _clock.Advance(TimeSpan.FromSeconds(0.1));
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
        _store!.Write("test", writing =>
        {
            writing.Save("design", "a", "2", []);
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
        _clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(2, Save("a").Number);
        Close();
        Directory.Delete(Note);
    }

    [Fact]
    public void Restoring_and_forgetting_write_the_note_anew()
    {
        Save("a");
        var backup = Backup.Make(Db, At("backup.db")).Path;
        Save("a");
        Close();
        Restoring.Restore(backup, Db, _clock.GetUtcNow());
        Assert.Equal((LifeIn(Note), null), (Open().LifeName, _store!.WhyAnotherLife));
        Save("b");
        _store!.Write("test", writing => writing.Delete("design", "a"));
        Close();
        Forgetting.Forget(Db, "design", "a", _clock.GetUtcNow());
        Assert.Equal((LifeIn(Note), null), (Open().LifeName, _store!.WhyAnotherLife));
        Close();
        File.Copy(backup, Db, overwrite: true);
        Assert.Equal("the one that was served here last had another life", Open().WhyAnotherLife);
    }

    [Theory]
    [InlineData("restore")]
    [InlineData("forget")]
    public void A_verb_on_a_store_that_was_put_in_place_by_hand_gives_none_of_the_lost_numbers(string verb)
    {
        Save("a");
        _store!.Write("test", writing => writing.Delete("design", "a"));
        CopyTo("older.db");
        Open();
        for (var i = 0; i < 5; i++)
            Save("b");
        PutInPlace("older.db");
        if (verb == "forget")
            Forgetting.Forget(Db, "design", "a", _clock.GetUtcNow());
        else
            Restoring.Restore(At("older.db"), Db, _clock.GetUtcNow());
        Assert.Null(Open().WhyAnotherLife);
        Assert.Equal(1006, Save("b").Number); // 5 was given, a leap of 1000, the next
    }

    private Store Open()
    {
        _store ??= new Store(Db, _clock);
        _store.Open();
        return _store;
    }

    private void Close()
    {
        _store?.Dispose();
        _store = null;
    }

    private Revision Save(string key)
    {
        _clock.Advance(TimeSpan.FromMilliseconds(1));
        return (_store ?? Open()).Write("test", writing => writing.Save("design", key, "1", []));
    }

    private void CopyTo(string name)
    {
        Close();
        File.Copy(Db, At(name), overwrite: true);
        File.Delete(At(name) + ".highwater");
    }

    private void PutInPlace(string name)
    {
        Close();
        File.Copy(At(name), Db, overwrite: true);
    }

    private static string LifeIn(string note) => File.ReadAllText(note).Split(' ')[1];
}
