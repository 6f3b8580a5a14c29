using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What the business pays.</summary>
public sealed record Expense : IRecurring
{
    /// <summary>A name for people.</summary>
    /// <example>Bench rent</example>
    [MaxLength(Documents.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The amount each time, in the profile's currency.</summary>
    /// <example>540.00</example>
    [Money]
    public required decimal Amount { get; init; }

    /// <summary>How often it is paid.</summary>
    public required Per Per { get; init; }

    /// <summary>With <c>per</c> "time": how many times a year.</summary>
    /// <example>8</example>
    [Quantity]
    public decimal? Times { get; init; }

    /// <summary>What kind of cost it is.</summary>
    public CostKind? CostKind { get; init; }

    /// <summary>"piece": costed on each design; "sale": charged by the channel. Such a line is left out of what bench time must recover.</summary>
    public TracedTo? TracedTo { get; init; }

    /// <summary>False for what is paid out of taxed money, such as a loan's principal.</summary>
    public bool Deductible { get; init; } = true;
}

/// <summary>What recovers an expense that is not spread over bench time.</summary>
public enum TracedTo { Piece, Sale }
