using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What a quote offers, apart from the profile that must be carried and the channel that it is sold on.</summary>
public abstract record QuoteTerms
{
    /// <summary>The client's own reference, of at most 200 characters: neither a name nor an address.</summary>
    /// <example>wedding table, May</example>
    [MaxLength(Limits.NameLength)]
    public string? To { get; init; }

    /// <summary>The last day on which it can be accepted. Needed before it is issued.</summary>
    /// <example>2027-06-30</example>
    public DateOnly? ValidUntil { get; init; }

    /// <summary>The day on which the work is promised.</summary>
    /// <example>2027-08-31</example>
    public DateOnly? Promised { get; init; }

    /// <summary>The pieces, a run of each design.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<QuoteLine> Lines { get; init; } = [];

    /// <summary>Hours beside the bench work of the lines: design, drawing, fitting, travel.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<QuoteExtra> Extra { get; init; } = [];

    /// <summary>What others do or sell for it: added as it is.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<QuoteBought> Bought { get; init; } = [];

    /// <summary>Share on top of the floor total for a rush. It never counts towards the floor.</summary>
    /// <example>0.25</example>
    [Share]
    public decimal Rush { get; init; }

    /// <summary>The total that is asked, with or without sales tax as the channel's prices are. Needed before the quote is issued.</summary>
    /// <example>4200.00</example>
    [Price(Above = true)]
    public decimal? Price { get; init; }

    /// <summary>What is paid before the work begins.</summary>
    public QuoteDeposit? Deposit { get; init; }

    /// <summary>The other payments; their shares and the deposit's are 1 together.</summary>
    [MaxLength(Limits.Fees)]
    public IReadOnlyList<QuotePayment> Payments { get; init; } = [];

    /// <summary>Changes to the design that the price includes.</summary>
    /// <example>2</example>
    [Pieces(Maximum = "1000")]
    public decimal RevisionsIncluded { get; init; }

    /// <summary>Hours that each of them takes.</summary>
    /// <example>1.5</example>
    [Quantity]
    public decimal RevisionHours { get; init; }

    /// <summary>What the client may do with the design.</summary>
    public QuoteRights? Rights { get; init; }
}
