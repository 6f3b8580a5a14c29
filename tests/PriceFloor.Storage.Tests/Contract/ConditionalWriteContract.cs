using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>A write that reads first and then decides: it writes on exactly what it has read.</summary>
public abstract class ConditionalWriteContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public async Task Of_many_who_saw_the_same_revision_one_writes_and_the_others_are_refused()
    {
        using var another = Engine.Open();
        Save("a", "0");
        for (var round = 1; round <= 20; round++)
        {
            var seen = Store.Read(snapshot => snapshot.Newest("design", "a"))!.Number;
            var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(writer =>
                Task.Run(() => IfStill(writer % 2 == 0 ? Store : another, seen, $"{round}-{writer}"))));
            Assert.Equal(seen + 1, Assert.Single(outcomes, written => written is not null)!.Number);
        }

        Assert.Equal(21, Store.Read(snapshot => snapshot.History("design", "a")).Count);
    }

    [Fact]
    public void A_writer_sees_what_it_wrote_itself()
    {
        Store.Write("test", async writing =>
        {
            await writing.Save("design", "a", "1", [new DocumentName("profile", "main")]);
            Assert.Equal(("1", 1L), await writing.Newest("design", "a") is { } own ? (own.Body, own.Number) : default);
            Assert.Equal([new DocumentName("design", "a")], await writing.UsersOf("profile", "main"));
            Assert.Equal(["a"], (await writing.List("design")).Select(revision => revision.Key));
            Assert.Equal(2, (await writing.Delete("design", "a")).Number);
            Assert.Null(await writing.Find("design", "a"));
            Assert.Empty(await writing.UsersOf("profile", "main"));
            return true;
        });
        Assert.Equal(["1", null], Store.Read(snapshot => snapshot.History("design", "a")).Select(revision => revision.Body));
    }

    private static Revision? IfStill(Store store, long number, string body) => store.Write("test", async writing =>
        (await writing.Newest("design", "a"))?.Number == number ? await writing.Save("design", "a", body, []) : null);
}
