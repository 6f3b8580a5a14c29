using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>The method and what it needs.</summary>
public sealed record DepreciationRule
{
    /// <summary>straight-line needs <c>lifeYears</c>, declining-balance needs <c>rate</c>, percentages needs <c>percentages</c>.</summary>
    public required DepreciationMethod Method { get; init; }

    /// <summary>Years of use, in whole months: twelve times it is a whole number of at least 1.</summary>
    /// <example>8</example>
    [Quantity(Above = true, Maximum = "1000")]
    public decimal? LifeYears { get; init; }

    /// <summary>Share of the book value lost in a year.</summary>
    /// <example>0.25</example>
    [Share]
    public decimal? Rate { get; init; }

    /// <summary>A published table's row: the share of the full cost for each year of use; together at most 1.</summary>
    /// <example>[0.2, 0.32, 0.192]</example>
    [MinLength(1), MaxLength(Documents.Limits.Bands)]
    [Share]
    public IReadOnlyList<decimal>? Percentages { get; init; }
}

/// <summary>How a thing's cost is spread over its years.</summary>
public enum DepreciationMethod { StraightLine, DecliningBalance, Percentages }
