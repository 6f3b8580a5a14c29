using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>
/// A store that goes on keeps its life. One that was brought back to an earlier state, or lost a document for good, begins another: its positions
/// mean nothing to those who knew the one before, and no revision has a number that was given before.
/// </summary>
public abstract class LifeContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void A_store_that_continues_keeps_its_life()
    {
        var life = Store.LifeName;
        for (var start = 0; start < 3; start++)
        {
            Save("a", "1");
            Close();
            Assert.Equal((life, null), (Store.LifeName, Store.WhyAnotherLife));
        }

        Assert.Equal(4, Save("a", "1").Number);
    }

    [Fact]
    public void A_store_that_is_brought_back_is_as_it_was_and_gives_no_number_again()
    {
        Save("a", "1");
        var back = Engine.Keep();
        var (life, mark) = (Store.LifeName, MarkAt(1));
        var given = Enumerable.Range(2, 4).Select(body => Save("a", $"{body}").Number).Max();
        Save("b", "1");
        Close();
        back();
        Assert.NotEqual(life, Store.LifeName);
        Assert.NotEqual(mark, MarkAt(1));
        Assert.Equal(["1"], Store.Read(snapshot => snapshot.History("design", "a")).Select(revision => revision.Body!));
        Assert.Null(Store.Read(snapshot => snapshot.Newest("design", "b")));
        Assert.True(Save("a", "6").Number > given);
        life = Store.LifeName;
        given = Save("b", "2").Number;
        Close();
        back();
        Assert.NotEqual(life, Store.LifeName);
        Assert.True(Save("b", "3").Number > given);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void After_forgetting_nothing_is_known_of_the_document_and_another_life_gives_higher_numbers()
    {
        var life = Store.LifeName;
        Store.Write("test", writing => writing.Save("design", "a", "1", [new DocumentName("profile", "main")]));
        for (var body = 2; body <= 6; body++)
            Save("a", $"{body}");
        var given = Delete("a").Number;
        Save("b", "1");
        Assert.Equal(7, Forget("a"));
        Assert.NotEqual(life, Store.LifeName);
        Assert.Null(Store.Read(snapshot => snapshot.Newest("design", "a")));
        Assert.Empty(Store.Read(snapshot => snapshot.History("design", "a")));
        Assert.Empty(Store.Read(snapshot => snapshot.KeysEver("design", "a")));
        Assert.Empty(Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        Assert.DoesNotContain(Store.Read(snapshot => snapshot.DocumentEntries(long.MaxValue, 100)), entry => entry.Key == "a");
        var told = Store.Read(snapshot => snapshot.OtherEntries(long.MaxValue, 1))[0];
        Assert.Equal(("forgotten", "design", ""), (told.What, told.Kind, told.Key));
        Assert.Equal("1", Store.Read(snapshot => snapshot.Find("design", "b"))!.Body);
        Assert.True(Save("a", "1").Number > given);
        Assert.True(Save("b", "2").Number > given);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void Only_a_deleted_document_can_be_forgotten_and_only_once()
    {
        Save("a", "1");
        Assert.Contains("Delete it first", Refusal("design", "a"), StringComparison.Ordinal);
        Delete("a");
        Store.Write("test", writing => writing.Save("price", "a/web", "1", [new DocumentName("design", "a")]));
        Assert.Contains("price a/web", Refusal("design", "a"), StringComparison.Ordinal);
        Store.Write("test", writing => writing.Delete("price", "a/web"));
        Forget("a");
        Assert.Contains("never was", Refusal("design", "a"), StringComparison.Ordinal);
        Assert.Contains("never was", Refusal("forgotten", ""), StringComparison.Ordinal);
    }

    [Fact]
    public void A_design_takes_the_histories_below_it_along_and_no_others()
    {
        Save("a", "1");
        foreach (var key in new[] { "a/web", "a/fair", "ab/web" })
        {
            Save("price", key, "1");
            if (key == "a/fair")
            {
                Delete("a");
                Assert.Contains("price \"a/fair\" is still there", Refusal("design", "a", kindBelow: "price"), StringComparison.Ordinal);
            }

            Store.Write("test", writing => writing.Delete("price", key));
        }

        Assert.Equal(6, Forget("a", kindBelow: "price")); // a, a/web, a/fair: each written and deleted
        Assert.Equal(["ab/web", "ab/web"], Store.Read(snapshot => snapshot.DocumentEntries(long.MaxValue, 100)).Select(entry => entry.Key));
        Assert.Equal(2, Store.Read(snapshot => snapshot.History("price", "ab/web")).Count);
        Assert.Equal(["ab/web"], Store.Read(snapshot => snapshot.KeysEver("price", "")));
    }

    private int Forget(string key, string? kindBelow = null)
    {
        Close();
        return Engine.Forget("design", key, kindBelow);
    }

    private string Refusal(string kind, string key, string? kindBelow = null)
    {
        Close();
        return Assert.Throws<StoreException>(() => Engine.Forget(kind, key, kindBelow)).Message;
    }
}
