using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>A thing that wears out.</summary>
public sealed record Equipment
{
    /// <summary>A name for people.</summary>
    /// <example>Kiln</example>
    [MaxLength(Documents.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>What it cost.</summary>
    /// <example>3200.00</example>
    [Money]
    public required decimal Cost { get; init; }

    /// <summary>What it will still fetch at the end; at most its cost.</summary>
    /// <example>200.00</example>
    [Money]
    public decimal Salvage { get; init; }

    /// <summary>When it went into use; its month counts whole. Absent: the whole year counts, as a first year.</summary>
    /// <example>2025-04-01</example>
    public DateOnly? InService { get; init; }

    /// <summary>How its cost is spread.</summary>
    public required DepreciationRule Depreciation { get; init; }
}
