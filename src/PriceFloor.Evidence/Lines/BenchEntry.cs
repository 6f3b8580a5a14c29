namespace PriceFloor.Evidence.Lines;

/// <summary>One line of the bench log: so many started, so many good, so many minutes, all for the whole batch.</summary>
public sealed record BenchEntry
{
    /// <summary>What the sheet or program that says so is called.</summary>
    public required string Source { get; init; }

    /// <summary>The line's own id in its source; null if the source has none.</summary>
    public LineId? Ref { get; init; }

    /// <summary>The local day.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The design's key; null: work away from pieces, which has only minutes.</summary>
    public string? Sku { get; init; }

    /// <summary>The step's name; null: the whole piece.</summary>
    public string? Step { get; init; }

    /// <summary>Pieces started, at least 1; null if not recorded.</summary>
    public int? Started { get; init; }

    /// <summary>Of these, good ones: at most as many as were started; null if not recorded.</summary>
    public int? Good { get; init; }

    /// <summary>Bench minutes, at least 0; null if not recorded.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>Where it stands in the log; unique. Of equal days the lower came first.</summary>
    public required long Position { get; init; }
}
