using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;

namespace PriceFloor.Evidence;

/// <summary>The lines of a log within the days asked for, by design.</summary>
internal sealed class LogLines
{
    private readonly Dictionary<string, List<Movement>> _bySku = new(StringComparer.Ordinal);
    private readonly List<Movement> _movements;
    private readonly ILookup<string, BenchEntry> _bench;
    private readonly HashSet<string> _countAsMade;
    private readonly List<BenchEntry> _madeTwice = [];
    private readonly bool _isFromAsked;
    private Dictionary<string, List<SoldLine>>? _sold;

    public LogLines(IReadOnlyList<Movement> movements, IReadOnlyList<BenchEntry> bench, IReadOnlyList<LogSource> sources, EvidenceChoices choices)
    {
        _isFromAsked = choices.From is not null;
        var entries = InOrder(bench, choices);
        _bench = entries.Where(entry => entry.Sku is not null).ToLookup(entry => entry.Sku!, StringComparer.Ordinal);
        _countAsMade = Named(source => source.CountsAsMade);
        var wholeDays = Named(source => source.WholeDays);
        WholeDays = [.. entries.Where(entry => wholeDays.Contains(entry.Source))];
        Newest = entries.Count == 0 ? null : entries[^1].On;
        _movements = new List<Movement>(movements.Count);
        foreach (var line in movements)
            if (Holds(choices, line.On))
                Add(line);

        HashSet<string> Named(Func<LogSource, bool> which) => [.. sources.Where(which).Select(source => source.Name)];
    }

    public IReadOnlyList<Movement> Movements => _movements;

    /// <summary>Entries of sources that write whole days down.</summary>
    public IReadOnlyList<BenchEntry> WholeDays { get; }

    public IReadOnlyList<BenchEntry> MadeTwice => _madeTwice;

    public DateOnly? Newest { get; private set; }

    /// <summary>A design's lines. Bench entries from before its present way of making do not count, unless the caller says from when.</summary>
    public LogOfDesign Of(KnownDesign design, OrderBook orders)
    {
        _sold ??= SoldBySku(orders);
        var all = _bench[design.Sku].ToList();
        var (movements, hasMade) = MovementsOf(design.Sku, design.Stored.Design);
        var money = design.Stored.Year.Currency.Code;
        var sold = _sold.GetValueOrDefault(design.Sku)?.FindAll(line => line.Order.Terms.Currency == money) ?? [];
        return new LogOfDesign(
            movements,
            _isFromAsked ? all : Since(all, design.MadeSoSince),
            sold)
        {
            HasMade = hasMade,
            LeftOut = movements.Count(line => line.What == MovementKind.Sold) - sold.Count,
        };
    }

    /// <summary>
    /// A design's movements, with the good pieces of its last bench step where a source counts so, but not on days on which movements say what was
    /// made; and whether any do.
    /// </summary>
    public (IReadOnlyList<Movement> Lines, bool HasMade) MovementsOf(string sku, Design design)
    {
        List<Movement> own = [.. _bySku.GetValueOrDefault(sku) ?? []];
        var made = own.FindAll(line => line.What == MovementKind.Made).Select(line => line.On).ToHashSet();
        var counted = _bench[sku].Where(entry => _countAsMade.Contains(entry.Source) && entry.Good > 0 && IsLast(entry, design)).ToList();
        _madeTwice.AddRange(counted.Where(entry => made.Contains(entry.On)));
        own.AddRange(counted.Where(entry => !made.Contains(entry.On)).Select(MadeBy));
        return (own, made.Count > 0);
    }

    /// <summary>The bench entries of one design that count, in their order.</summary>
    /// <param name="bench">All of them.</param>
    /// <param name="choices">The days that count.</param>
    /// <param name="since">The first day of the present way of making; null: there never was another.</param>
    public static IReadOnlyList<BenchEntry> Counting(IReadOnlyList<BenchEntry> bench, EvidenceChoices choices, DateOnly? since)
    {
        var entries = InOrder(bench, choices);
        return choices.From is null ? Since(entries, since) : entries;
    }

    private static Dictionary<string, List<SoldLine>> SoldBySku(OrderBook orders)
    {
        var bySku = new Dictionary<string, List<SoldLine>>(StringComparer.Ordinal);
        foreach (var order in orders.Orders)
            foreach (var line in order.Lines)
                Under(bySku, line.Line.Sku).Add(line);
        return bySku;
    }

    private void Add(Movement line)
    {
        _movements.Add(line);
        Under(_bySku, line.Sku).Add(line);
        if (!(line.On <= Newest))
            Newest = line.On;
    }

    private static List<T> Under<T>(Dictionary<string, List<T>> bySku, string sku)
    {
        if (!bySku.TryGetValue(sku, out var lines))
            bySku.Add(sku, lines = []);
        return lines;
    }

    private static List<BenchEntry> InOrder(IReadOnlyList<BenchEntry> bench, EvidenceChoices choices) =>
        [.. bench.Where(entry => Holds(choices, entry.On)).OrderBy(entry => entry.On).ThenBy(entry => entry.Position)];

    private static List<BenchEntry> Since(List<BenchEntry> entries, DateOnly? since) => entries.FindAll(entry => !(entry.On < since));

    private static bool Holds(EvidenceChoices choices, DateOnly day) => day <= choices.To && !(day < choices.From);

    private static bool IsLast(BenchEntry entry, Design design) => entry.Step is null || entry.Step == design.Making.Steps?[^1].Name;

    private static Movement MadeBy(BenchEntry entry) => new()
    {
        Source = entry.Source,
        On = entry.On,
        What = MovementKind.Made,
        Sku = entry.Sku!,
        Pieces = entry.Good!.Value,
        Position = entry.Position,
    };
}
