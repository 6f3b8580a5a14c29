using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>The log is read by position, and part of it; backups hold it, and a source can be forgotten.</summary>
public abstract class LogReadingContract<TEngine> : StoreWithALog<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void A_page_goes_on_after_a_position_and_leaves_out_what_is_not_asked_for()
    {
        Send(Sold("1", day: 100), Sold("2", "AB-001", day: 101), Sold("3", day: 102) with { Place = "fair" }, Sold("4", day: 103));
        Assert.Equal([2L, 3L], Movements(all => all with { After = 1, Limit = 2 }).Select(line => line.Position));
        Assert.Equal([1L, 3L, 4L], Movements(all => all with { Design = "RB-014" }).Select(line => line.Position));
        Assert.Equal([3L], Movements(all => all with { Place = "fair" }).Select(line => line.Position));
        Assert.Equal([2L, 3L], Movements(all => all with { From = 101, To = 102 }).Select(line => line.Position));
        Assert.Equal([2L], Movements(all => all with { Designs = ["AB-001", "nobody"] }).Select(line => line.Position));
        Assert.Empty(Movements(all => all with { Source = "nobody" }));
        Assert.Equal(4, Movements(all => all with { Source = Shop }).Count);
    }

    [Fact]
    public void Bench_entries_are_a_list_of_their_own()
    {
        Send(Sold("1"));
        var away = new BenchLine { Source = Book, Ref = Marks.OfRef(Book, "packing"), Day = 90, Minutes = 4525 };
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1", step: "torch"), away], WholeDays = true });
        Assert.Equal((1L, 2L), (Position.Movements, Position.Bench));
        var entries = Store.Read(snapshot => snapshot.BenchEntries(new LogQuestion { UpTo = 2 }));
        Assert.Equal([("RB-014", "torch", 12, 11, 79_200L), (null, null, null, null, 4525L)],
            entries.Select(entry => (entry.Design, entry.Step, entry.Started, entry.Good, entry.Minutes)));
        var source = Assert.Single(Store.Read(snapshot => snapshot.LogSources()));
        Assert.Equal(new LogSource { Name = Book, IsWholeDays = true }, source);
    }

    [Fact]
    public void A_restored_store_knows_its_refs_again()
    {
        Send(Sold("a"));
        var marks = Marks.OfRef(Shop, "a");
        Close();
        var restore = Engine.Keep();
        Send(Sold("b"));
        Close();
        restore();
        Assert.Equal(marks, Marks.OfRef(Shop, "a"));
        Assert.Equal([LogState.Unchanged, LogState.Stored], Send(Sold("a"), Sold("b")).States);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void A_forgotten_source_is_gone_from_both_lists_and_no_position_is_given_again()
    {
        Send(Sold("a"), Sold("b", "AB-001"));
        var fair = Sold("f") with { Source = "fair", Ref = Marks.OfRef("fair", "f") };
        Append(new LogAppend<MovementLine> { Source = "fair", Lines = [fair] });
        Append(new LogAppend<BenchLine> { Source = Shop, Lines = [Bench("1") with { Source = Shop }], WholeDays = true });
        var life = Store.LifeName;
        Close();
        Assert.Equal(3, Engine.ForgetSource(Shop));
        Assert.Equal("3: 1 RB-014 5200", Told(Movements()));
        Assert.NotEqual(life, Store.LifeName);
        Assert.Empty(Store.Read(snapshot => snapshot.LogSources()));
        Send(Sold("a"));
        Assert.Equal("3: 1 RB-014 5200, 4: 1 RB-014 5200", Told(Movements()));
        Assert.Empty(Engine.Faults());
        Close();
        Assert.Throws<StoreException>(() => Engine.ForgetSource("nobody"));
    }
}
