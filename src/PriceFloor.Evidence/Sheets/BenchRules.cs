namespace PriceFloor.Evidence.Sheets;

/// <summary>What a bench entry must say, whether it came in a sheet or as JSON.</summary>
public static class BenchRules
{
    /// <summary>The line with its first fault, if it has one and cannot be used for it.</summary>
    public static SentBenchEntry Checked(SentBenchEntry line) =>
        line.Fault is null && FaultOf(line) is { } fault ? line with { Fault = fault } : line;

    /// <summary>Work on a design says how many were begun or how long it took; work away from pieces says only its minutes.</summary>
    private static Code? FaultOf(SentBenchEntry line)
    {
        var isAway = line.Sku is null;
        if (line.On is null || (line.Minutes is null && (isAway || line.Started is null)) || (line.Good is not null && line.Started is null))
            return FaultCodes.Required;
        if (isAway && (line.Started is not null || line.Step is not null))
            return FaultCodes.Required;
        return LogRanges.Fits(line.On.Value) && Counts(line) && Takes(line.Minutes) && LogRanges.Fits(line.Ref) && LogRanges.Fits(line.Step) ? null
            : FaultCodes.OutOfRange;
    }

    private static bool Counts(SentBenchEntry line) =>
        line.Started is null or (>= 1 and <= LogRanges.MostPieces) && line.Good is null or >= 0 && !(line.Good > line.Started);

    private static bool Takes(decimal? minutes) => minutes is not { } each
        || (each is >= 0 and <= LogRanges.MostMinutes && Rounding.HasAtMost(each, LogRanges.MinuteDecimals));
}
