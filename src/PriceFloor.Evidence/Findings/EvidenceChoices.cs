namespace PriceFloor.Evidence.Findings;

/// <summary>What a caller asks of the log.</summary>
public sealed record EvidenceChoices
{
    public const decimal UsualLevel = 0.9m, LowestLevel = 0.5m, HighestLevel = 0.99m;

    /// <summary>Pieces of a next run.</summary>
    public const int UsualRun = 60;

    /// <summary>How often intervals are to hold: 0.5 to 0.99.</summary>
    public decimal Level { get; init; } = UsualLevel;

    /// <summary>The first day; null: all that there is.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last day, of which the ages are.</summary>
    public required DateOnly To { get; init; }

    /// <summary>Key of the channel whose sales the take is of; null: all.</summary>
    public string? Channel { get; init; }

    /// <summary>So many pieces on from today, a piece is asked for; null: none.</summary>
    public int? At { get; init; }

    /// <summary>Pieces of the next run, of which the mean minutes are given.</summary>
    public int Run { get; init; } = UsualRun;
}
