using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Lines that are all that a source has for some days.</summary>
public abstract class LogWholeContract<TEngine> : StoreWithALog<TEngine>
    where TEngine : EngineUnderTest, new()
{
    private static readonly LogDays s_days = new(100, 110);

    [Fact]
    public void What_the_days_no_longer_hold_is_withdrawn_and_other_days_and_sources_stay()
    {
        Send(Sold("before", day: 99), Sold("a", day: 100), Sold("b", day: 110), Sold("after", day: 111));
        var fair = Sold("f", day: 105) with { Source = "fair", Ref = Marks.OfRef("fair", "f") };
        Append(new LogAppend<MovementLine> { Source = "fair", Lines = [fair] });
        var then = Position.Movements;
        var done = Whole(Sold("b", day: 110), Sold("c", day: 101));
        Assert.Equal([LogState.Unchanged, LogState.Stored], done.States);
        Assert.Equal(1, done.Missing);
        Assert.Equal([99, 110, 111, 105, 101], Movements().Select(line => line.Day));
        Assert.Equal([99, 100, 110, 111, 105], Movements(all => all with { UpTo = then }).Select(line => line.Day));
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void Nothing_for_some_days_withdraws_them_all()
    {
        Send(Sold("a", day: 100), Sold("b", day: 110));
        Assert.Equal(2, Whole().Missing);
        Assert.Empty(Movements());
        Assert.Equal(0, Whole().Missing);
    }

    [Fact]
    public void A_withdrawn_line_of_the_days_counts_once()
    {
        Send(Sold("a", day: 100), Sold("b", day: 101));
        var done = Append(new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Withdrawn = [Marks.OfRef(Shop, "a")] });
        Assert.Equal([true], done.Withdrawn);
        Assert.Equal(1, done.Missing);
    }

    [Fact]
    public void Lines_of_designs_that_the_caller_may_not_see_stay()
    {
        Send(Sold("a", day: 100), Sold("b", "OTHER", day: 100));
        Assert.Equal(1, Append(new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Designs = ["RB-014"] }).Missing);
        Assert.Equal("2: 1 OTHER 5200", Told(Movements()));
    }

    [Fact]
    public void One_line_that_is_refused_keeps_everything_as_it_was()
    {
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1", day: 105)], CountsAsMade = true });
        Send(Sold("a", day: 100));
        var done = Append(new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Lines = [Sold("b", day: 100), MadeLine("m", day: 105)] });
        Assert.Equal([LogState.Stored, LogState.MadeTwice], done.States);
        Assert.Equal("1: 1 RB-014 5200", Told(Movements()));
        Assert.Equal(1, Position.Movements);
    }

    [Fact]
    public async Task What_somebody_wrote_while_it_was_prepared_is_compared_again()
    {
        Send(Sold("a", day: 100));
        var isFirst = true;
        var done = await Store.AppendAsync("shop key", new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Lines = [Sold("b", day: 100)] },
            writing =>
            {
                isFirst = false;
                return ValueTask.CompletedTask;
            });
        Assert.False(isFirst);
        Assert.Equal(1, done.Missing);
        var again = new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Lines = [Sold("c", day: 100), Sold("b", day: 100)] };
        var both = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Store.AppendAsync("shop key", again, _ => ValueTask.CompletedTask)));
        Assert.Equal(1, both.Sum(one => one.States.Count(state => state == LogState.Stored)));
        Assert.Equal(2, Movements().Count);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public async Task A_large_switch_that_is_stopped_between_its_transactions_is_not_there_and_the_next_one_is()
    {
        const int Lines = (2 * LogAppend<MovementLine>.MostWhileOthersWait) + 1000, Kept = 6000, Transactions = 6;
        var (marks, sold) = (Marks, Sold("x")); // once: a store may be far away
        LogAppend<MovementLine> Sheet(int first, long paid) => new()
        {
            Source = Shop,
            Whole = s_days,
            Lines = [.. Enumerable.Range(first, Lines).Select(i => sold with { Paid = paid, Ref = marks.OfRef(Shop, $"{i}") })],
        };
        Append(Sheet(0, 5200));
        var (before, second) = (Position, Sheet(Lines - Kept, 4900));
        // while others wait it begins, writes its lines in three, withdraws the first 5,000, and ends
        for (var stopped = 1; stopped <= Transactions; stopped++)
        {
            var left = stopped;
            var others = new List<Task>();
            await Assert.ThrowsAsync<InvalidOperationException>(() => Store.AppendAsync("shop key", second, _ =>
            {
                others.Add(Store.WriteAsync("another key", _ => ValueTask.FromResult(true)));
                return --left == 0 ? throw new InvalidOperationException("ended") : ValueTask.CompletedTask;
            }));
            await Task.WhenAll(others);
            Assert.Equal(before, Position);
            Assert.Equal(Lines * 5200L, Movements().Sum(line => line.Paid));
            Assert.Empty(Engine.Faults());
        }

        var done = Append(second);
        Assert.Equal((Kept, Lines - Kept), (done.States.Count(state => state == LogState.Corrected), done.Missing));
        Assert.Equal((Lines, Lines * 4900L), (Movements().Count, Movements().Sum(line => line.Paid)));
        Assert.Equal(Lines * 5200L, Movements(all => all with { UpTo = before.Movements }).Sum(line => line.Paid));
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public async Task Other_writers_write_between_the_transactions_of_a_switch_and_readers_see_none_of_it()
    {
        var (marks, sold) = (Marks, Sold("x"));
        var lines = Enumerable.Range(0, 3 * LogAppend<MovementLine>.MostWhileOthersWait).Select(i => sold with { Ref = marks.OfRef(Shop, $"{i}") });
        var (calls, seen, others) = (0, new List<long>(), new List<Task>());
        await Store.AppendAsync("shop key", new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Lines = [.. lines] }, async _ =>
        {
            calls++;
            others.Add(Store.WriteAsync("another key", _ => ValueTask.FromResult(true)));
            seen.Add((await Store.ReadAsync(snapshot => snapshot.LogPosition())).Movements);
        });
        await Task.WhenAll(others);
        Assert.Equal(6, calls); // names, the beginning, three with lines, the end
        Assert.All(seen, position => Assert.Equal(0, position));
        Assert.Equal(3 * LogAppend<MovementLine>.MostWhileOthersWait, Position.Movements);
    }

    [Fact]
    public void What_a_request_says_of_its_source_counts_for_its_own_lines()
    {
        Send(MadeLine("m", day: 105));
        var book = new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1", day: 105)], CountsAsMade = true };
        Assert.Equal([LogState.MadeTwice], Append(book).States);
        Assert.Equal([LogState.Stored], Append(book with { CountsAsMade = false }).States);
    }

    private LogAppended Whole(params MovementLine[] lines) => Append(new LogAppend<MovementLine> { Source = Shop, Whole = s_days, Lines = lines });
}
