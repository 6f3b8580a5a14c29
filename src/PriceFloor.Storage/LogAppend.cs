namespace PriceFloor.Storage;

/// <summary>Lines of one source that are added to the log, corrected or withdrawn.</summary>
public sealed record LogAppend<T> where T : LogLine
{
    /// <summary>
    /// As many lines at most are prepared together, and stored in one transaction while nobody waits: most of them touch the same pages of the
    /// indexes, which are then written once.
    /// </summary>
    public const int MostTogether = 50_000;

    /// <summary>After so many lines a transaction ends if somebody waits.</summary>
    public const int MostWhileOthersWait = 5_000;

    public required string Source { get; init; }

    /// <summary>Lines whose refs differ from each other.</summary>
    public IReadOnlyList<T> Lines { get; init; } = [];

    /// <summary>Refs of lines to withdraw.</summary>
    public IReadOnlyList<byte[]> Withdrawn { get; init; } = [];

    /// <summary>
    /// The days of which the lines are all that the source has: present lines of these days that are not among them are withdrawn, and everything is
    /// stored in one transaction. Null if the lines are only some.
    /// </summary>
    public LogDays? Whole { get; init; }

    /// <summary>Whether the source's minutes are all minutes of its days; null leaves what was said before.</summary>
    public bool? WholeDays { get; init; }

    /// <summary>Whether good pieces of the last step count as made; null leaves what was said before.</summary>
    public bool? CountsAsMade { get; init; }

    /// <summary>The designs whose lines may be corrected and withdrawn; null: all.</summary>
    public IReadOnlyCollection<string>? Designs { get; init; }

    internal bool SaysSomething => WholeDays is not null || CountsAsMade is not null;
}

/// <summary>Days from the first to the last, as days since 0001-01-01.</summary>
public sealed record LogDays(int From, int To);

/// <summary>What became of lines that were sent.</summary>
/// <param name="States">One for each line, in order.</param>
/// <param name="Withdrawn">For each ref to withdraw whether there was such a line.</param>
/// <param name="Missing">How many lines of the whole days were withdrawn, since they were not sent again.</param>
public sealed record LogAppended(IReadOnlyList<LogState> States, IReadOnlyList<bool> Withdrawn, int Missing)
{
    internal LogAppended And(LogAppended other) =>
        new([.. States, .. other.States], [.. Withdrawn, .. other.Withdrawn], Missing + other.Missing);
}

/// <summary>What became of a line.</summary>
public enum LogState
{
    /// <summary>It is new.</summary>
    Stored = 0,

    /// <summary>The same was there.</summary>
    Unchanged = 1,

    /// <summary>Its ref said something else before.</summary>
    Corrected = 2,

    /// <summary>Refused: pieces of this design count as made that day by the other list.</summary>
    MadeTwice = 3,

    /// <summary>Not stored: its ref belongs to a design that the caller may not change.</summary>
    OfAnother = 4,
}
