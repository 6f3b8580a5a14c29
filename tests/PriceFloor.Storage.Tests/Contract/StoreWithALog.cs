namespace PriceFloor.Storage.Tests.Contract;

/// <summary>What the contracts of the log start from: lines of an invented web shop and of a bench book.</summary>
public abstract class StoreWithALog<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    protected const string Shop = "web-shop", Book = "bench-book";

    protected LogMarks Marks => Store.Read(snapshot => snapshot.Marks());

    protected LogAppended Append<T>(LogAppend<T> append) where T : LogLine =>
        Store.AppendAsync("shop key", append, _ => ValueTask.CompletedTask).GetAwaiter().GetResult();

    protected LogAppended Send(params MovementLine[] lines) => Append(new LogAppend<MovementLine> { Source = Shop, Lines = lines });

    protected MovementLine Sold(string id, string design = "RB-014", int day = 100, int pieces = 1, long paid = 5200) => new()
    {
        Source = Shop,
        Ref = Marks.OfRef(Shop, id),
        Design = design,
        Day = day,
        What = 4,
        Place = "web",
        Currency = "USD",
        Pieces = pieces,
        Paid = paid,
        OrderMark = Marks.OfOrder(Shop, id),
    };

    protected MovementLine MadeLine(string id, int day = 90, string source = Shop) => new()
    {
        Source = source,
        Ref = Marks.OfRef(source, id),
        Design = "RB-014",
        Day = day,
        What = MovementLine.Made,
        Pieces = 11,
        LastStep = "anneal",
    };

    protected BenchLine Bench(string id, int day = 90, string? step = null, int good = 11) => new()
    {
        Source = Book,
        Ref = Marks.OfRef(Book, id),
        Design = "RB-014",
        Day = day,
        Step = step,
        LastStep = "anneal",
        Started = 12,
        Good = good,
        Minutes = 79_200,
    };

    protected List<MovementLine> Movements(Func<LogQuestion, LogQuestion>? which = null) =>
        Store.Read(snapshot => snapshot.Movements((which ?? (all => all))(new LogQuestion { UpTo = Position.Movements })));

    /// <summary>All that is handed on.</summary>
    protected static List<MovementRow> Taken(Action<Action<MovementRow>> hand)
    {
        var rows = new List<MovementRow>();
        hand(rows.Add);
        return rows;
    }

    protected LogPosition Position => Store.Read(snapshot => snapshot.LogPosition());

    protected static string Told(IEnumerable<MovementLine> lines) =>
        string.Join(", ", lines.Select(line => $"{line.Position}: {line.Pieces} {line.Design} {line.Paid}"));
}
