namespace PriceFloor.Evidence.Sheets;

/// <summary>Every line of a sheet in exactly one place, so that lines and money add up to what was read.</summary>
public sealed record SettledLines<T>
{
    /// <summary>Lines that count, in order of day, then of what they say: the order of the sheet does not matter.</summary>
    public required IReadOnlyList<UsedLine<T>> Used { get; init; }

    public required IReadOnlyList<CancelledLine> Cancelled { get; init; }

    public required IReadOnlyList<RefusedLogLine> Refused { get; init; }

    /// <summary>Names that lead nowhere, largest first.</summary>
    public required IReadOnlyList<UnplacedName> Unplaced { get; init; }

    public required LineCount RefusedCount { get; init; }

    /// <summary>Lines that stand twice in the sheet with the same ref.</summary>
    public required LineCount Duplicate { get; init; }

    /// <summary>Lines of other days than the caller asked about.</summary>
    public required LineCount Outside { get; init; }

    public LineCount UnplacedCount => Unplaced.Aggregate(default(LineCount), (sum, name) => sum + name.Count);

    public LineCount UsedCount => LineCount.Of(Used.Select(line => line.Money));

    public LineCount CancelledCount => LineCount.Of(Cancelled.Select(line => line.Money));

    /// <summary>All of them together.</summary>
    public LineCount Read => UsedCount + CancelledCount + RefusedCount + UnplacedCount + Duplicate + Outside;
}

/// <summary>A line that counts.</summary>
/// <param name="Line">Its line in the sheet.</param>
/// <param name="Ref">The source's own id of it; null if it has none.</param>
/// <param name="Entry">What it says.</param>
/// <param name="Money">What it brought.</param>
public sealed record UsedLine<T>(int Line, string? Ref, T Entry, decimal Money)
{
    /// <summary>What it says.</summary>
    public T Entry { get; internal set; } = Entry;
}

/// <summary>A line of an order that came to nothing: it counts in nothing, and one stored before by its ref is withdrawn.</summary>
public sealed record CancelledLine(int Line, string? Ref, decimal Money);

/// <summary>A line that cannot be used: never more than its number and why.</summary>
public sealed record RefusedLogLine(int Line, Code Code);

/// <summary>Lines under a name that is no design or channel which the caller may see.</summary>
public sealed record UnplacedName(string Name, LineCount Count);
