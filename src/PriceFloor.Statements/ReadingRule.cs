using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Statements;

/// <summary>Conditions for a line, and what a matching line is. All given conditions must hold; at least one is required.</summary>
public sealed record ReadingRule
{
    /// <summary>A part of the line's text, in any case; white space counts as one space.</summary>
    /// <example>bench rent</example>
    [MaxLength(Limits.NameLength)]
    public string? TextHas { get; init; }

    /// <summary>
    /// A regular expression on the line's text, in any case; without look-around, back references and atomic groups, so no text can make it slow.
    /// </summary>
    /// <example>rent (jan|feb|mar)</example>
    [MaxLength(Limits.NameLength)]
    public string? TextMatches { get; init; }

    /// <summary>Either way if absent, so a refund is netted against what it pays back.</summary>
    public Paid? Paid { get; init; }

    /// <summary>The smallest amount, whichever way it went.</summary>
    /// <example>100.00</example>
    [Money]
    public decimal? Least { get; init; }

    /// <summary>The largest amount, whichever way it went.</summary>
    /// <example>900.00</example>
    [Money]
    public decimal? Most { get; init; }

    /// <summary>The kind of cost; with "business", or as the name of a household line.</summary>
    public CostKind? CostKind { get; init; }

    /// <summary>What the line is.</summary>
    public required Placement To { get; init; }

    /// <summary>The business's share. If absent: 1 with "business", 0 with "household".</summary>
    /// <example>0.12</example>
    [Share]
    public decimal? BusinessShare { get; init; }

    /// <summary>With "business": where the expense is recovered if it is not spread over bench time.</summary>
    public TracedTo? TracedTo { get; init; }

    /// <summary>With "other-income": "net" if tax was already taken, as from wages; taxable if absent.</summary>
    public IncomeKind? IncomeKind { get; init; }

    /// <summary>
    /// How often a year it is paid, such as 10 for ten monthly instalments: used if the files cover less than a year. If absent, the payments
    /// show it.
    /// </summary>
    /// <example>10</example>
    [Pieces(Minimum = "1", Maximum = "366")]
    public decimal? TimesAYear { get; init; }

    /// <summary>The name of the line in the profile; the words of its kind of cost if absent.</summary>
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

    /// <summary>Sales tax or VAT paid on: neither an expense nor a sale.</summary>
    SalesTax,

    /// <summary>Income that does not come from pieces.</summary>
    OtherIncome,

    /// <summary>Between own accounts, including a card's monthly payment.</summary>
    OwnAccount,

    /// <summary>None of these.</summary>
    LeaveOut,

    /// <summary>
    /// Cash that was drawn or paid in. Beside a cash book it is between own accounts, since the book says what became of it; without one, drawn
    /// cash is household and cash that was paid in is money for pieces.
    /// </summary>
    Cash,
}
