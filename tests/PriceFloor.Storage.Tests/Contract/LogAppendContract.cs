using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>A line is known by its source and its ref: again, corrected, withdrawn.</summary>
public abstract class LogAppendContract<TEngine> : StoreWithALog<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void A_line_comes_back_with_everything_that_it_said()
    {
        var line = Sold("10231/1") with
        {
            Listed = 5800,
            Fees = 196,
            ShippingCharged = 500,
            ShippingCost = 620,
            Stall = "Spring fair",
            Grade = 2,
            Resale = 0,
            Piece = "7/25",
        };
        Assert.Equal([LogState.Stored], Send(line).States);
        var stored = Assert.Single(Movements());
        Assert.Equal(line with { Position = 1, Ref = stored.Ref, OrderMark = stored.OrderMark }, stored);
        Assert.Equal(line.Ref, stored.Ref);
        Assert.Equal(line.OrderMark, stored.OrderMark);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void The_same_again_is_unchanged_and_moves_nothing()
    {
        Send(Sold("a"), Sold("b"));
        var before = Position;
        Assert.Equal([LogState.Unchanged, LogState.Unchanged], Send(Sold("b"), Sold("a")).States);
        Assert.Equal(before, Position);
        Assert.Equal(2, Movements().Count);
    }

    [Fact]
    public void Other_content_corrects_and_the_former_line_stays_for_the_moment_before()
    {
        Send(Sold("a"), Sold("b"));
        var then = Position;
        Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal([LogState.Corrected, LogState.Unchanged], Send(Sold("a", paid: 4900), Sold("b")).States);
        Assert.Equal("2: 1 RB-014 5200, 3: 1 RB-014 4900", Told(Movements()));
        Assert.Equal("1: 1 RB-014 5200, 2: 1 RB-014 5200", Told(Movements(all => all with { UpTo = then.Movements })));
        Assert.Equal(then, Store.Read(snapshot => snapshot.LogPosition(then.At)));
        Assert.Equal(0, Store.Read(snapshot => snapshot.LogPosition(then.At - 1)).Movements);
    }

    [Fact]
    public void What_is_withdrawn_leaves_and_can_come_again()
    {
        Send(Sold("a"), Sold("b"));
        var before = Position.Movements;
        var withdrawn = Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "a"), Marks.OfRef(Shop, "never")] });
        Assert.Equal([true, false], withdrawn.Withdrawn);
        Assert.Equal("2: 1 RB-014 5200", Told(Movements()));
        Assert.Equal(before + 1, Position.Movements);
        Assert.Equal(2, Movements(all => all with { UpTo = before }).Count);
        Assert.Equal([LogState.Stored], Send(Sold("a")).States);
        Assert.Equal("2: 1 RB-014 5200, 4: 1 RB-014 5200", Told(Movements()));
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void Two_sources_may_use_the_same_ref_and_their_marks_differ()
    {
        Send(Sold("1"));
        var other = Sold("1") with { Source = "fair-book", Ref = Marks.OfRef("fair-book", "1") };
        Append(new LogAppend<MovementLine> { Source = "fair-book", Lines = [other] });
        Assert.Equal(2, Movements().Count);
        Assert.NotEqual(Marks.OfRef(Shop, "1"), Marks.OfRef("fair-book", "1"));
        Assert.NotEqual(Marks.OfRef(Shop, "1")[..8], Marks.OfOrder(Shop, "1"));
    }

    [Fact]
    public void More_lines_than_fit_into_one_transaction_are_stored_in_several_and_each_once()
    {
        const int Lines = 2 * LogAppend<MovementLine>.MostTogether + 5;
        var (marks, sold) = (Marks, Sold("x")); // once: a store may be far away
        var lines = Enumerable.Range(0, Lines).Select(i => sold with { Ref = marks.OfRef(Shop, $"{i}"), Day = i / 10 }).ToArray();
        Assert.All(Send(lines).States, state => Assert.Equal(LogState.Stored, state));
        Assert.All(Send([.. lines.Reverse()]).States, state => Assert.Equal(LogState.Unchanged, state));
        Assert.Equal(Lines, Position.Movements);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void Pieces_of_a_design_are_made_on_a_day_by_one_list_only()
    {
        BenchLine[] counted = [Bench("1", step: "torch"), Bench("2", step: "anneal"), Bench("3", day: 91)];
        Append(new LogAppend<BenchLine> { Source = Book, Lines = counted, CountsAsMade = true });
        // day 90: the last step counts, day 91: the whole piece, day 92: nobody else says so
        Assert.Equal([LogState.MadeTwice, LogState.MadeTwice, LogState.Stored], Send(MadeLine("a"), MadeLine("b", 91), MadeLine("c", 92)).States);
        BenchLine[] late = [Bench("4", day: 92), Bench("5", day: 92, step: "torch"), Bench("6", 92, good: 0)];
        Assert.Equal([LogState.MadeTwice, LogState.Stored, LogState.Stored], Append(new LogAppend<BenchLine> { Source = Book, Lines = late }).States);
        Append(new LogAppend<BenchLine> { Source = Book, CountsAsMade = false });
        Assert.Equal([LogState.Stored], Send(MadeLine("a")).States);
        Assert.Equal("bench-book", Assert.Single(Store.Read(snapshot => snapshot.LogSources())).Name);
    }

    [Fact]
    public void Who_may_not_see_a_design_neither_corrects_nor_withdraws_its_lines()
    {
        Send(Sold("a"), Sold("b", "OTHER"));
        var held = new LogAppend<MovementLine> { Source = Shop, Lines = [Sold("a", paid: 1), Sold("b", paid: 1)], Designs = ["RB-014"] };
        Assert.Equal([LogState.Corrected, LogState.OfAnother], Append(held).States);
        Assert.Equal([false], Append(held with { Lines = [], Withdrawn = [Marks.OfRef(Shop, "b")] }).Withdrawn);
        Assert.Equal("2: 1 OTHER 5200, 3: 1 RB-014 1", Told(Movements()));
    }

    [Fact]
    public void Where_the_log_stands_is_another_after_each_change_of_it_and_nothing_else()
    {
        var points = new List<LogPoint?> { Store.LogPoint };
        Send(Sold("a"), Sold("b"));
        points.Add(Store.LogPoint);
        Store.Write("test", writing => writing.Save("design", "a", "1", []));
        Assert.Equal(points[^1], Store.LogPoint);
        Send(Sold("a", paid: 4900));
        points.Add(Store.LogPoint);
        Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "a")] });
        points.Add(Store.LogPoint);
        if (Store.IsShared)
            Assert.All(points, Assert.Null); // only a snapshot knows what others wrote
        else
            Assert.Equal(4, points.OfType<LogPoint>().Distinct().Count());
    }

    [Fact]
    public async Task Nothing_is_kept_if_the_key_may_no_longer_write()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() => Store.AppendAsync("shop key",
            new LogAppend<MovementLine> { Source = Shop, Lines = [Sold("a")] }, _ => throw new InvalidOperationException("ended")));
        Assert.Equal(0, Position.Movements);
    }
}
