namespace PriceFloor.Evidence.Sheets;

/// <summary>A bench entry as a source writes it, before names are looked up.</summary>
public sealed record SentBenchEntry
{
    /// <summary>Its line, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Why it cannot be read; null if it can.</summary>
    public Code? Fault { get; init; }

    /// <summary>The day; null if it cannot be read.</summary>
    public DateOnly? On { get; init; }

    /// <summary>Key or alias of the design; null for work away from pieces.</summary>
    public string? Sku { get; init; }

    /// <summary>Name of the step; null for the whole piece.</summary>
    public string? Step { get; init; }

    /// <summary>Pieces begun.</summary>
    public int? Started { get; init; }

    /// <summary>Pieces that came out good.</summary>
    public int? Good { get; init; }

    /// <summary>Minutes for the whole batch.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>The source's own id of the line.</summary>
    public string? Ref { get; init; }

    /// <summary>Its status is a word for lines that count in nothing.</summary>
    public bool IsCancelled { get; init; }
}
