using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Positions: the order of all writes, from which followers continue.</summary>
public abstract class PositionContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void Positions_count_from_one_without_a_gap_whatever_was_taken_back()
    {
        Assert.Equal((0, 0), (Store.Position, Store.Read(snapshot => snapshot.Position)));
        Assert.Equal([1L, 2L], new[] { Save("a", "1").Position, Save("b", "1").Position });
        Store.Write("test", async writing =>
        {
            writing.Undo();
            return await writing.Save("design", "c", "1", []);
        });
        Assert.Throws<InvalidOperationException>(() => Store.Write<bool>("test", async writing =>
        {
            await writing.Save("design", "c", "1", []);
            throw new InvalidOperationException();
        }));
        var (saved, deleted) = Store.Write("test",
            async writing => (await writing.Save("design", "c", "1", []), await writing.Delete("design", "a")));
        Assert.Equal((3, 4), (saved.Position, deleted.Position));
        Assert.Equal((4, 4), (Store.Position, Store.Read(snapshot => snapshot.Position)));
        Close();
        Assert.Equal(4, Store.Position);
        Assert.Equal(5, Save("a", "2").Position);
    }

    [Fact]
    public async Task What_is_kept_in_memory_is_known_by_the_point_at_which_it_was_read()
    {
        var begun = Store.Point;
        Save("a", "1");
        await Store.Fresh();
        Assert.True(Store.Point.Holds(begun));
        Assert.False(begun.Holds(Store.Point));
        var (point, name) = Store.Read(async snapshot => (await snapshot.Point(), snapshot.HistoryName));
        Assert.True(point.IsAt(Store.Point));
        Assert.Equal(Store.Point.History, name);
        Assert.True(point.HoldsKeysOf(Store.Point));
        Assert.Equal(2, Store.Write("test", async writing =>
        {
            await writing.Save("design", "a", "2", []);
            return (await writing.Point()).Position;
        }));
        Assert.Equal((1, Store.IsShared), (Store.Processes, begun.History != ""));
    }

    [Fact]
    public void Who_was_at_a_position_learns_the_newest_of_each_document_since_deletions_included()
    {
        Save("a", "1");
        Save("b", "1");
        var here = Store.Position;
        Assert.Empty(Store.Read(snapshot => snapshot.NewestSince(here)));
        Save("b", "2");
        Save("b", "3");
        Save("c", "1");
        Delete("a");
        var newest = Store.Read(snapshot => snapshot.NewestSince(here)).OrderBy(revision => revision.Key);
        Assert.Equal([("a", null), ("b", "3"), ("c", "1")], newest.Select(revision => (revision.Key, revision.Body)));
        Assert.Equal(3, Store.Read(snapshot => snapshot.NewestSince(0)).Count);
    }

    [Fact]
    public void Changes_between_two_positions_are_listed_as_they_were_at_both()
    {
        Save("a", "1");
        Save("b", "1");
        Save("same", "1");
        var after = Store.Position;
        Save("a", "2");
        Save("a", "3");
        Delete("b");
        Save("c", "1");
        var upTo = Store.Position;
        Save("a", "4");
        Save("d", "1");
        var changes = Store.Read(snapshot => snapshot.ChangesBetween(after, upTo)).OrderBy(change => change.Document.Key).ToList();
        Assert.Equal(
            [("a", "1", "3"), ("b", "1", null), ("c", null, "1")],
            changes.Select(change => (change.Document.Key, change.Before?.Body, change.After?.Body)));
        Assert.True(changes[1].After!.IsDeletion);
        Assert.Null(changes[2].Before);
        Assert.Empty(Store.Read(snapshot => snapshot.ChangesBetween(upTo, upTo)));
    }

    [Fact]
    public void The_last_position_of_some_kinds_passes_over_the_others()
    {
        long Last(long upTo, params string[] kinds) => Store.Read(snapshot => snapshot.LastOf(kinds, upTo));
        Assert.Equal(0, Last(Store.Position, "design"));
        Save("a", "1");
        Save("channel", "x", "1");
        Delete("a");
        Save("channel", "x", "2");
        Assert.Equal((3, 1, 4, 4, 0), (Last(4, "design"), Last(2, "design"), Last(4, "design", "channel"), Last(9, "channel"), Last(4, "price")));
    }

    [Fact]
    public void A_moment_has_a_position_and_all_that_was_there()
    {
        var first = Save("a", "1");
        Clock.Advance(TimeSpan.FromHours(1));
        Save("channel", "x", "1");
        var then = Save("a", "2");
        Clock.Advance(TimeSpan.FromHours(1));
        Delete("a");
        Save("b", "1");
        Assert.Equal((0, 1, 3, 5), (At(first.SavedAt - 1), At(first.SavedAt), At(then.SavedAt), At(long.MaxValue)));
        Assert.Empty(Store.Read(snapshot => snapshot.All(first.SavedAt - 1)));
        Assert.Equal(["a 2", "x 1"], All(then.SavedAt));
        Assert.Equal(["b 1", "x 1"], All(long.MaxValue));

        long At(long moment) => Store.Read(snapshot => snapshot.PositionAt(moment));
        IEnumerable<string> All(long moment) => Store.Read(snapshot => snapshot.All(moment))
            .Select(revision => $"{revision.Key} {revision.Body}").Order(StringComparer.Ordinal);
    }

    [Fact]
    public void The_mark_of_a_history_stays_and_no_other_history_has_it()
    {
        Save("a", "1");
        Save("a", "2");
        var marks = new[] { MarkAt(0), MarkAt(1), MarkAt(2) };
        Assert.Equal(3, marks.Distinct().Count());
        Save("a", "3");
        Close();
        Assert.Equal(marks, new[] { MarkAt(0), MarkAt(1), MarkAt(2) });
        using var other = new TEngine();
        using var store = other.Open();
        for (var body = 1; body <= 2; body++)
            store.Write("test", writing => writing.Save("design", "a", $"{body}", []));
        Assert.NotEqual(marks[2], store.MarkAt(2).AtOnce());
    }
}
