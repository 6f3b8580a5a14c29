using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Revisions of documents: numbered, never overwritten, and read as they are or as they were.</summary>
public abstract class RevisionContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void The_newest_revisions_between_two_moments_are_read_from_the_newest_back()
    {
        foreach (var body in new[] { "1", "2", "3", "4" })
        {
            Save("a", body);
            Clock.Advance(TimeSpan.FromHours(1));
        }

        Save("ab", "other");
        long At(int hour) => Moment.Of(new DateTimeOffset(2027, 1, 2, hour, 0, 0, TimeSpan.Zero));
        IEnumerable<string?> Latest(int limit, long after = -1, long upTo = long.MaxValue) => Store
            .Read(snapshot => snapshot.Latest(new DocumentName("design", "a"), limit, after, upTo)).Select(revision => revision.Body);
        Assert.Equal(["4", "3", "2", "1"], Latest(9));
        Assert.Equal(["4", "3"], Latest(2));
        Assert.Equal(["3", "2"], Latest(9, after: At(9), upTo: At(11)));
        Assert.Empty(Latest(9, after: At(12)));
    }

    [Fact]
    public async Task What_is_awaited_is_what_stands()
    {
        Save("a", "1");
        Assert.Equal("1", (await Store.ReadAsync(snapshot => snapshot.Find("design", "a")))!.Body);
        Assert.True(Store.Bytes > 0);
    }

    [Fact]
    public void A_key_that_was_ever_there_is_still_known()
    {
        Save("x/1", "1");
        Save("x/2", "1");
        Save("y/1", "1");
        Delete("x/1");
        Assert.Equal(["x/1", "x/2"], Store.Read(snapshot => snapshot.KeysEver("design", "x/")));
    }

    [Fact]
    public void Revisions_are_numbered_and_never_overwritten()
    {
        Save("a", "1");
        Save("b", "1");
        Save("a", "2");
        Delete("a");
        Save("a", "1");
        var history = Store.Read(snapshot => snapshot.History("design", "a"));
        Assert.Equal([1L, 2L, 3L, 4L], history.Select(revision => revision.Number));
        Assert.Equal(["1", "2", null, "1"], history.Select(revision => revision.Body));
        Assert.Equal("2", Store.Read(snapshot => snapshot.RevisionOf("design", "a", 2))!.Body);
        Assert.Equal(["a", "b"], Store.Read(snapshot => snapshot.List("design")).Select(revision => revision.Key));
    }

    [Fact]
    public void Time_never_goes_back_even_if_the_clock_does()
    {
        var first = Save("a", "1");
        var second = Save("a", "2");
        Clock.AdjustTime(Clock.GetUtcNow().AddHours(-1));
        var third = Save("a", "3");
        Assert.True(first.SavedAt < second.SavedAt && second.SavedAt < third.SavedAt);
        Assert.Equal("2", Store.Read(snapshot => snapshot.Find("design", "a", second.SavedAt))!.Body);
        Assert.Equal("1", Store.Read(snapshot => snapshot.Find("design", "a", second.SavedAt - 1))!.Body);
        Assert.Null(Store.Read(snapshot => snapshot.Find("design", "a", first.SavedAt - 1)));
    }

    [Fact]
    public void All_writes_of_one_transaction_have_one_time()
    {
        var (one, two) = Store.Write("test",
            async writing => (await writing.Save("design", "a", "1", []), await writing.Save("design", "b", "1", [])));
        Assert.Equal(one.SavedAt, two.SavedAt);
    }

    [Fact]
    public void All_that_a_write_saves_has_its_time()
    {
        var (now, saved) = Store.Write("test", async writing => (writing.Now, await writing.Save("design", "a", "1", [])));
        Assert.Equal(now, saved.SavedAtTime);
        Assert.Equal((Clock.GetUtcNow(), "test"), (now, saved.SavedBy));
        Assert.Equal(saved, Store.Read(snapshot => snapshot.Newest("design", "a")));
    }

    [Fact]
    public void A_list_can_be_had_as_it_was()
    {
        Save("a", "1");
        var then = Save("b", "1").SavedAt;
        Delete("a");
        Save("c", "1");
        Assert.Equal(["b", "c"], Store.Read(snapshot => snapshot.List("design")).Select(revision => revision.Key));
        Assert.Equal(["a", "b"], Store.Read(snapshot => snapshot.List("design", asOf: then)).Select(revision => revision.Key));
        Assert.Equal(["b"], Store.Read(snapshot => snapshot.List("design", after: "a", limit: 1, asOf: then)).Select(revision => revision.Key));
    }

    [Fact]
    public void A_prefix_lists_only_what_starts_with_it()
    {
        foreach (var key in new[] { "A/x", "A/y", "AB/x", "a/x" })
            Save(key, "1");
        Assert.Equal(["A/x", "A/y"], Store.Read(snapshot => snapshot.List("design", "A/")).Select(revision => revision.Key));
    }

    [Fact]
    public void A_write_that_throws_leaves_nothing()
    {
        Assert.Throws<InvalidOperationException>(() => Store.Write<bool>("test", async writing =>
        {
            await writing.Save("design", "a", "1", []);
            throw new InvalidOperationException();
        }));
        Assert.True(Store.Read(snapshot => snapshot.IsEmpty));
        Assert.Equal(1, Save("a", "1").Number);
    }

    [Fact]
    public async Task What_a_reader_or_writer_throws_itself_comes_out_as_it_was_thrown()
    {
        foreach (var mine in new Exception[] { new InvalidOperationException(), new IOException(), new TimeoutException() })
        {
            Assert.Same(mine, Record.Exception(() => Store.Read<bool>(_ => throw mine)));
            Assert.Same(mine, Record.Exception(() => Store.Write<bool>("test", _ => throw mine)));
            Assert.Same(mine, await Record.ExceptionAsync(() => Store.WriteAsync<bool>("test", _ => throw mine)));
        }

        Assert.Equal((0, false), (Store.RefusedWrites, Store.IsRefusingWrites));
    }

    [Fact]
    public void References_are_those_of_the_present_documents()
    {
        Store.Write("test", writing => writing.Save("design", "a", "1", [new DocumentName("profile", "main"), new DocumentName("profile", "main")]));
        Assert.Equal([new DocumentName("design", "a")], Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        Store.Write("test", writing => writing.Save("design", "a", "2", [new DocumentName("profile", "other")]));
        Assert.Empty(Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        Store.Write("test", writing => writing.Save("design", "a", "3", [new DocumentName("profile", "other"), new DocumentName("profile", "main")]));
        Store.Write("test", writing => writing.Save("design", "a", "4", [new DocumentName("profile", "main"), new DocumentName("profile", "other")]));
        Assert.Equal([new DocumentName("design", "a")], Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        Assert.Equal([new DocumentName("design", "a")], Store.Read(snapshot => snapshot.UsersOf("profile", "other")));
        Delete("a");
        Assert.Empty(Store.Read(snapshot => snapshot.UsersOf("profile", "other")));
        Assert.Empty(Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        Store.Write("test", writing => writing.Save("design", "a", "5", [new DocumentName("profile", "main")]));
        Assert.Equal([new DocumentName("design", "a")], Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
    }

    [Fact]
    public async Task Many_writers_lose_nothing()
    {
        await Task.WhenAll(Enumerable.Range(0, 8).Select(writer => Task.Run(() =>
        {
            for (var i = 0; i < 25; i++)
                Save("shared", $"{writer}-{i}");
        })));
        var history = Store.Read(snapshot => snapshot.History("design", "shared"));
        Assert.Equal(Enumerable.Range(1, 200).Select(number => (long)number), history.Select(revision => revision.Number));
        Assert.Equal(200, history.Select(revision => revision.Body).Distinct().Count());
        Assert.Equal(history.Select(revision => revision.SavedAt).Order(), history.Select(revision => revision.SavedAt));
    }

    [Fact]
    public void An_engine_that_says_that_it_answers_at_once_does()
    {
        var waited = Store.Read(async snapshot =>
        {
            var question = snapshot.List("design");
            var isAnswered = question.IsCompleted;
            Assert.Empty(await question);
            return !isAnswered;
        });
        Assert.False(waited && Store.AnswersAtOnce);
    }

    [Fact]
    public void A_reader_sees_one_moment()
    {
        Save("a", "1");
        Store.Read(async snapshot =>
        {
            Assert.Equal("1", (await snapshot.Find("design", "a"))!.Body);
            Save("a", "2");
            Save("b", "1");
            Assert.Equal("1", (await snapshot.Find("design", "a"))!.Body);
            return Assert.Single(await snapshot.List("design"));
        });
        Assert.Equal("2", Store.Read(snapshot => snapshot.Find("design", "a"))!.Body);
    }
}
