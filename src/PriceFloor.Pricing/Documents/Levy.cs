using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>One tax or contribution on the profit.</summary>
public sealed record Levy
{
    /// <summary>A name for people.</summary>
    /// <example>income tax</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The share of the profit that is charged.</summary>
    /// <example>0.9235</example>
    [Share]
    public decimal Share { get; init; } = 1;

    /// <summary>What is taken off the base first.</summary>
    /// <example>15750.00</example>
    [Money]
    public decimal Allowance { get; init; }

    /// <summary>Income from elsewhere that is already taxed: it uses up the allowance and the low bands.</summary>
    /// <example>0.00</example>
    [Money]
    public decimal OtherBase { get; init; }

    /// <summary>The share of this levy that later levies let one deduct.</summary>
    /// <example>0.5</example>
    [Share]
    public decimal DeductibleShare { get; init; }

    /// <summary>Rates by slice of the base, from zero up; exactly the last has no <c>upTo</c>.</summary>
    [MinLength(1), MaxLength(Limits.Bands)]
    public required IReadOnlyList<Band> Bands { get; init; }
}

/// <summary>A slice of the base and its rate.</summary>
public sealed record Band
{
    /// <summary>Where the slice ends; absent in the last band.</summary>
    /// <example>11925.00</example>
    [Money(Above = true)]
    public decimal? UpTo { get; init; }

    /// <summary>The rate on the part of the base inside the slice.</summary>
    /// <example>0.1</example>
    [Share]
    public decimal Rate { get; init; }
}
