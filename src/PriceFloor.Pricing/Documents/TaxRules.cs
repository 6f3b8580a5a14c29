using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What a year's profit pays before the household sees it. Rates are data, never code.</summary>
public sealed record TaxRules
{
    /// <summary>"none", "flat" (with <c>rate</c>) or "levies" (with <c>levies</c>).</summary>
    public required TaxKind Kind { get; init; }

    /// <summary>With "flat": the share of every unit of profit; below 1.</summary>
    /// <example>0.22</example>
    [Share]
    public decimal? Rate { get; init; }

    /// <summary>With "levies": applied in order.</summary>
    [MaxLength(Limits.Levies)]
    public IReadOnlyList<Levy> Levies { get; init; } = [];
}

/// <summary>Which of the three forms the tax rules take.</summary>
public enum TaxKind { None, Flat, Levies }
