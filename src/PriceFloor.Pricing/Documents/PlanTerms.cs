using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>When the money for pieces sold on a channel comes in.</summary>
public sealed record PlanTerms
{
    /// <summary>Key of a stored channel.</summary>
    /// <example>wholesale</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>The share that is paid before the sale.</summary>
    /// <example>0.3</example>
    [Share]
    public decimal DepositShare { get; init; }

    /// <summary>How many months before the month of the sale it comes in: 0 to 11.</summary>
    /// <example>1</example>
    [Pieces(Maximum = "11")]
    public decimal DepositMonthsBefore { get; init; }

    /// <summary>How many months after the month of the sale the rest comes in: 0 to 11.</summary>
    /// <example>1</example>
    [Pieces(Maximum = "11")]
    public decimal PaidAfterMonths { get; init; }

    /// <summary>True if the channel pays its sales tax itself, so that it never comes to the maker.</summary>
    public bool RemittedByChannel { get; init; }
}
