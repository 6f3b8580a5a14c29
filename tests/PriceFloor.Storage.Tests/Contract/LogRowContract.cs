using System.Buffers.Binary;
using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>The log is read as rows of numbers by those who calculate with many of them.</summary>
public abstract class LogRowContract<TEngine> : StoreWithALog<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void Rows_have_the_numbers_of_their_names_and_say_what_the_lines_say()
    {
        Send(Sold("1") with
        {
            Stall = "Spring fair",
            Piece = "7/25",
            Listed = 5800,
            Fees = 196,
            ShippingCharged = 500,
            ShippingCost = 620,
            Grade = 2,
            Resale = 0
        });
        var row = Assert.Single(Rows(all => all));
        var names = Names();
        Assert.Equal(
            (1L, names["source", Shop], names["design", "RB-014"], names["channel", "web"], names["currency", "USD"], names["stall", "Spring fair"]),
            (row.Position, row.Source, row.Design, row.Place!.Value, row.Currency!.Value, row.Stall!.Value));
        Assert.Equal((100, 4, 1, 5200L, 5800L, 196L, 500L, 620L), (row.Day, row.What, row.Pieces, row.Paid!.Value, row.Listed!.Value, row.Fees!.Value,
            row.ShippingCharged!.Value, row.ShippingCost!.Value));
        Assert.Equal((2, false, "7/25"), (row.Grade, row.Resale, row.Piece));
        Assert.Equal(NumberOf(Marks.OfOrder(Shop, "1")), row.OrderMark);
        Assert.DoesNotContain(Store.Read(snapshot => snapshot.NamesOfLog()), name => name.Key == "7/25");
    }

    [Fact]
    public void Rows_are_of_a_design_a_channel_or_some_days_as_the_log_stood_then()
    {
        Send(Sold("1", day: 102), Sold("2", "AB-001", day: 101), Sold("3", day: 100) with { Place = "fair" });
        var then = Position;
        Send(Sold("1", day: 99));
        var names = Names();
        Assert.Equal([4L, 3L], Rows(all => all with { Design = names["design", "RB-014"] }).Select(row => row.Position)); // by day
        Assert.Equal([3L, 1L], Rows(all => all with { Design = names["design", "RB-014"], UpTo = then.Movements }).Select(row => row.Position));
        Assert.Equal([3L], Rows(all => all with { Place = names["channel", "fair"] }).Select(row => row.Position));
        Assert.Equal([2L, 3L], Rows(all => all with { From = 100, To = 101 }).Select(row => row.Position));
        Assert.Equal([2L, 3L, 4L],
            Rows(all => all with { Designs = [names["design", "RB-014"], names["design", "AB-001"]] }).Select(row => row.Position));
        Assert.Equal([2L], Rows(all => all with { Designs = [names["design", "AB-001"]] }).Select(row => row.Position));
    }

    [Fact]
    public void Bench_rows_are_of_a_design_or_of_some_sources()
    {
        var away = new BenchLine { Source = Shop, Ref = Marks.OfRef(Shop, "packing"), Day = 90, Minutes = 4525 };
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1", step: "torch")] });
        Append(new LogAppend<BenchLine> { Source = Shop, Lines = [away] });
        var names = Names();
        var row = Assert.Single(BenchRows(all => all with { Design = names["design", "RB-014"] }));
        Assert.Equal((names["step", "torch"], 12, 11, 79_200L), (row.Step!.Value, row.Started!.Value, row.Good!.Value, row.Minutes!.Value));
        row = Assert.Single(BenchRows(all => all with { Sources = [names["source", Shop]] }));
        Assert.Equal((null, 4525L), (row.Design, row.Minutes!.Value));
    }

    [Fact]
    public void Lines_of_orders_are_told_and_read_by_position()
    {
        var order = Marks.OfOrder(Shop, "A");
        Send(Sold("1") with { OrderMark = order }, Sold("2", "AB-001") with { OrderMark = order }, Sold("3") with { OrderMark = null });
        var end = Position.Movements;
        Assert.Equal([1L, 2L], Orders((snapshot, take) => snapshot.OrderRows(0, end, take)).Select(row => row.Position));
        Assert.Equal([1L], Orders((snapshot, take) => snapshot.OrderRows(0, 1, take)).Select(row => row.Position));
        Assert.Equal(NumberOf(order), Assert.Single(Orders((snapshot, take) => snapshot.OrderRows(1, end, take))).OrderMark);
        Assert.Equal([Names()["design", "AB-001"]], Store.Read(snapshot => snapshot.DesignsAt([2])));
        Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "2")] });
        Assert.Equal([2L], Orders((snapshot, take) => snapshot.EndedOrderRows(end, Position.Movements, take)).Select(row => row.Position));
        // It was there.
        Assert.Equal([1L, 2L], Orders((snapshot, take) => snapshot.OrderRows(0, Position.Movements, take)).Select(row => row.Position));
        Assert.Equal([1L], At(Position.Movements));
        Assert.Equal([1L, 2L], At(end));

        IEnumerable<long> At(long upTo) =>
            Rows((snapshot, take) => snapshot.MovementRowsAt([1, 2], new LogRowQuestion { UpTo = upTo }, take)).Select(row => row.Position);
    }

    [Fact]
    public void Held_rows_are_the_rows_that_were_read()
    {
        var order = Marks.OfOrder(Shop, "A");
        Send(
            Sold("1") with
            {
                Stall = "Spring fair",
                Piece = "7/25 \u2020",
                Listed = 0,
                Fees = -196,
                ShippingCharged = long.MaxValue,
                Grade = 2,
                Resale = 0,
            },
            Sold("2", "AB-001", paid: long.MinValue + 1) with { OrderMark = order }, MadeLine("3"), Sold("4") with { OrderMark = order });
        var (names, rows, held) = (Names(), Rows(all => all), new HeldMovements());
        for (var turn = 0; turn < 2; turn++)
        {
            held.Clear([names["design", "RB-014"], 99]);
            Assert.All(rows, row =>
            {
                if (row.Design == names["design", "RB-014"])
                    held.Add(row, isShared: row.OrderMark == NumberOf(order));
                else
                    held.AddOther(row);
            });
            Assert.Equal(rows.Where(row => row.Position != 2).Select(row => row.OrderMark == NumberOf(order) ? row : row.WithoutOrder()),
                Taken(take => held.Of(names["design", "RB-014"], take)));
            Assert.Empty(Taken(take => held.Of(99, take)));
            Assert.Equal((true, false), (held.Has(99), held.Has(names["design", "AB-001"])));
            Assert.Equal([NumberOf(order)], held.Orders);
            Assert.Equal(rows.Where(row => row.Position is 2 or 4),
                Taken(take => held.OfOrder(NumberOf(order), take)).OrderBy(row => row.Position));
            Assert.Empty(Taken(take => held.OfOrder(1, take)));
            Assert.Equal((true, false), (held.HasOrder(NumberOf(order)), held.HasOrder(1)));
        }

        Assert.Equal([(3L, names["design", "RB-014"]), (1L, names["design", "AB-001"])],
            Store.Read(snapshot => snapshot.MovementsByDesign(Position.Movements)).OrderByDescending(design => design.Lines)
                .Select(design => (design.Lines, design.Design)));
    }

    [Fact]
    public void Designs_whose_lines_came_or_ended_are_told()
    {
        Send(Sold("1"), Sold("2", "AB-001"));
        var then = Position;
        Assert.Equal(["AB-001", "RB-014"], Touched(new LogPosition(0, 0, 0)));
        Send(Sold("1", "GLOBE")); // corrected: it was the other design's
        Assert.Equal(["GLOBE", "RB-014"], Touched(then));
        then = Position;
        Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "2")] });
        Assert.Equal(["AB-001"], Touched(then));
        then = Position;
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1")] });
        Assert.Equal(["RB-014"], Touched(then));
        Assert.Empty(Touched(Position));

        IEnumerable<string> Touched(LogPosition after)
        {
            var names = Store.Read(snapshot => snapshot.NamesOfLog()).ToDictionary(name => name.Id, name => name.Key);
            return Store.Read(snapshot => snapshot.DesignsTouched(after, Position)).Select(design => names[design!.Value])
                .Order(StringComparer.Ordinal);
        }
    }

    [Fact]
    public void The_end_and_the_newest_day_are_those_of_the_lines_that_there_are()
    {
        Assert.Equal(new LogPosition(0, 0, 0), Store.Read(snapshot => snapshot.LogPosition()));
        Assert.Null(NewestDay(1000));
        Send(Sold("1", day: 102));
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1", day: 104)] });
        Send(Sold("2", day: 108));
        Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "2")] });
        Assert.Equal(Position, Store.Read(snapshot => snapshot.LogPosition()));
        Assert.Equal(new LogPosition(0, 0, 0), Store.Read(snapshot => snapshot.LogPosition(Position.At - 1)));
        Assert.Equal((104, 102), (NewestDay(1000), NewestDay(103)));

        int? NewestDay(int to) => Store.Read(snapshot => snapshot.NewestDay(Position, to));
    }

    [Fact]
    public void Between_two_ends_the_newest_day_is_that_of_what_came_and_of_what_ended()
    {
        Send(Sold("1", day: 102), Sold("2", day: 108));
        var first = Position;
        Assert.Equal((null, null), Since(first, 1000));
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1", day: 104)] });
        Assert.Equal((104, null), Since(first, 1000));
        Send(Sold("3", day: 103), Sold("4", day: 109));
        Assert.Equal((109, null), Since(first, 1000));
        Assert.Equal((104, null), Since(first, 108));
        var second = Position;
        Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "2"), Marks.OfRef(Shop, "4")] });
        Assert.Equal((null, 109), Since(second, 1000));
        Assert.Equal((null, 108), Since(second, 108));
        Assert.Equal((104, 109), Since(first, 1000)); // the line of day 109 came and went

        (int? Came, int? Ended) Since(LogPosition after, int to) => Store.Read(snapshot => snapshot.NewestDaySince(after, Position, to));
    }

    [Fact]
    public void Days_of_a_fair_come_once_and_only_of_what_is_asked()
    {
        Send(Sold("1", day: 101) with { Place = "fair", Stall = "Spring fair" }, Sold("2", day: 101) with { Place = "fair", Stall = "Spring fair" },
            Sold("3", "AB-001", day: 102) with { Place = "fair", Stall = "Spring fair" }, Sold("4", day: 102),
            MadeLine("5", day: 103) with { Place = "fair", Stall = "Spring fair" });
        var (names, sold) = (Names(), Sold("1").What);
        var fair = new LogRowQuestion { UpTo = Position.Movements, Place = names["channel", "fair"] };
        long? spring = names["stall", "Spring fair"];
        Assert.Equal([(101, spring), (102, spring)], Days(fair, null));
        Assert.Equal([(101, spring)], Days(fair, [names["design", "RB-014"]]));
        Assert.Equal([(102, spring)], Days(fair with { From = 102 }, null));

        IEnumerable<(int Day, long? Stall)> Days(LogRowQuestion question, long[]? designs) =>
            Store.Read(snapshot => snapshot.StallDays(question, sold, designs)).Order();
    }

    private List<MovementRow> Rows(Func<LogRowQuestion, LogRowQuestion> which) =>
        Rows((snapshot, take) => snapshot.MovementRows(which(new LogRowQuestion { UpTo = Position.Movements }), take));

    private List<MovementRow> Rows(Func<Snapshot, Action<MovementRow>, ValueTask> read) => Taken(read);

    private List<OrderRow> Orders(Func<Snapshot, Action<OrderRow>, ValueTask> read) => Taken(read);

    private List<T> Taken<T>(Func<Snapshot, Action<T>, ValueTask> read) => Store.Read(async snapshot =>
    {
        var rows = new List<T>();
        await read(snapshot, rows.Add);
        return rows;
    });

    private List<BenchRow> BenchRows(Func<LogRowQuestion, LogRowQuestion> which) =>
        Store.Read(snapshot => snapshot.BenchRows(which(new LogRowQuestion { UpTo = Position.Bench })));

    private static ulong NumberOf(byte[] mark) => BinaryPrimitives.ReadUInt64BigEndian(mark);

    private NumbersOfNames Names() => new(Store.Read(snapshot => snapshot.NamesOfLog()));

    private sealed class NumbersOfNames(IEnumerable<LogName> names)
    {
        private readonly Dictionary<(string, string), long> _numbers = names.ToDictionary(name => (name.Kind, name.Key), name => name.Id);

        public long this[string kind, string key] => _numbers[(kind, key)];
    }
}
