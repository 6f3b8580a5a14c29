using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Sheets;

/// <summary>From bench entries as they were sent to those that count. Each line ends up in exactly one place.</summary>
public static class BenchSettling
{
    /// <summary>Settles the lines of one request.</summary>
    /// <param name="sent">The lines.</param>
    /// <param name="source">Who sent them.</param>
    /// <param name="names">The names that the caller may use.</param>
    /// <param name="window">The days that it is about.</param>
    public static SettledLines<BenchEntry> Settle(IReadOnlyList<SentBenchEntry> sent, string source, KnownNames names, LogWindow window)
    {
        var sorting = new LineSorting<BenchEntry>();
        var readable = sent.Where(line => line.Fault is null && !line.IsCancelled);
        var refs = new SameRefs<SentBenchEntry>(readable, line => line.Ref, (one, other) => one with { Line = other.Line } == other);
        foreach (var line in sent)
            if (line.On is { } day && !window.Holds(day))
                sorting.PutOutside(0);
            else if (line.IsCancelled)
                sorting.Cancel(new CancelledLine(line.Line, line.Ref, 0));
            else if ((line.Fault ?? (refs.Differ(line.Ref) ? SheetLineCodes.RefUsedTwice : null)) is { } fault)
                sorting.Refuse(line.Line, fault, 0);
            else if (refs.Repeats(line))
                sorting.Repeat(0);
            else if (line.Sku is { } sku && names.Design(sku) is null)
                sorting.Unplace(sku, 0);
            else
                sorting.Use(new UsedLine<BenchEntry>(line.Line, line.Ref, Entry(line, source, line.Sku is null ? null : names.Design(line.Sku)), 0));
        return sorting.Done(Order, (entry, position) => entry with { Position = position });
    }

    private static BenchEntry Entry(SentBenchEntry line, string source, string? design) => new()
    {
        Source = source,
        Ref = line.Ref is null ? null : LineId.OfText(line.Ref),
        On = line.On!.Value,
        Sku = design,
        Step = line.Step,
        Started = line.Started,
        Good = line.Good,
        Minutes = line.Minutes,
        Position = 0,
    };

    private static int Order(UsedLine<BenchEntry> one, UsedLine<BenchEntry> other)
    {
        var (own, others) = (one.Entry, other.Entry);
        ReadOnlySpan<int> order =
        [
            own.On.CompareTo(others.On), LineOrder.Refs(one.Ref, other.Ref), string.CompareOrdinal(own.Sku, others.Sku),
            string.CompareOrdinal(own.Step, others.Step), Nullable.Compare(own.Started, others.Started), Nullable.Compare(own.Good, others.Good),
            Nullable.Compare(own.Minutes, others.Minutes), one.Line.CompareTo(other.Line),
        ];
        return LineOrder.First(order);
    }
}
