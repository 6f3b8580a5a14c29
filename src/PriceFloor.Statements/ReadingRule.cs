using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Statements;

/// <summary>What a line must be like, and what it then is. All the conditions given must hold; at least one is.</summary>
public sealed record ReadingRule
{
    /// <summary>A part of the line's words, in any case; white space is counted as one space.</summary>
    /// <example>bench rent</example>
    [MaxLength(Limits.NameLength)]
    public string? TextHas { get; init; }

    /// <summary>
    /// A regular expression on the line's words, in any case; without look-around, back references and atomic
    /// groups, so that no text can make it slow.
    /// </summary>
    /// <example>rent (jan|feb|mar)</example>
    [MaxLength(Limits.NameLength)]
    public string? TextMatches { get; init; }

    /// <summary>Absent: either way, so that a refund is netted against what it pays back.</summary>
    public Paid? Paid { get; init; }

    /// <summary>The least amount, whichever way it went.</summary>
    /// <example>100.00</example>
    [Money]
    public decimal? Least { get; init; }

    /// <summary>The highest amount, whichever way it went.</summary>
    /// <example>900.00</example>
    [Money]
    public decimal? Most { get; init; }

    /// <summary>What kind of cost it is; with "business", or as the name of a household line.</summary>
    public CostKind? CostKind { get; init; }

    /// <summary>What the line is.</summary>
    public required Placement To { get; init; }

    /// <summary>The share that is the business's. Absent: 1 with "business", 0 with "household".</summary>
    /// <example>0.12</example>
    [Share]
    public decimal? BusinessShare { get; init; }

    /// <summary>With "business": where the expense is recovered when it is not spread over bench time.</summary>
    public TracedTo? TracedTo { get; init; }

    /// <summary>What the profile calls the line. Absent: the words of its kind of cost.</summary>
    /// <example>Bench rent</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }
}

/// <summary>Which way the money went.</summary>
public enum Paid { In, Out }

/// <summary>What a line of a statement is.</summary>
public enum Placement
{
    /// <summary>An expense of the business, or money back for one.</summary>
    Business,

    /// <summary>What the maker lives on.</summary>
    Household,

    /// <summary>Money for pieces, as it reached the account.</summary>
    Sale,

    /// <summary>Sales tax or VAT handed on: neither an expense nor a sale.</summary>
    SalesTax,

    /// <summary>Income that does not come from pieces.</summary>
    OtherIncome,

    /// <summary>Between own accounts, a card's monthly payment among them.</summary>
    OwnAccount,

    /// <summary>Nothing of this.</summary>
    LeaveOut,
}
