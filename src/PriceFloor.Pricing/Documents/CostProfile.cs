using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>One studio year, always twelve full months: all that the pieces must pay for, and the hours there are to make them in.</summary>
public sealed record CostProfile
{
    /// <summary>A name for people.</summary>
    /// <example>Year 2027</example>
    [MaxLength(Documents.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The studio's name as buyers know it, for the pages that are made for them.</summary>
    /// <example>Example Flamework</example>
    [MaxLength(Documents.Limits.NameLength)]
    public string? StudioName { get; init; }

    /// <summary>ISO 4217 code of every amount in the profile and in its designs.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Documents.Limits.CurrencyPattern)]
    public required string Currency { get; init; }

    /// <summary>First day of the year; the day of the month is ignored. Absent: 1 January of this year, or what is stored.</summary>
    /// <example>2027-01-01</example>
    public DateOnly? YearStart { get; init; }

    /// <summary>The working year.</summary>
    public required StudioCalendar Calendar { get; init; }

    /// <summary>Paid hands at the bench: their wage is an expense, their hours are hours.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<Helper> Helpers { get; init; } = [];

    /// <summary>What the business pays.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<Expense> Expenses { get; init; } = [];

    /// <summary>What wears out; its depreciation in this year is an expense.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<Equipment> Equipment { get; init; } = [];

    /// <summary>The least that the maker wants to take home, whoever else pays for the household.</summary>
    public Pay? Pay { get; init; }

    /// <summary>Of the finished pieces, the share that ever sells at its price; the rest stays, is given away or shown. At least 0.0001.</summary>
    /// <example>0.95</example>
    [Share(Minimum = "0.0001")]
    public decimal SoldShare { get; init; } = 1;

    /// <summary>What the maker lives on.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<HouseholdLine> Household { get; init; } = [];

    /// <summary>Income that does not come from pieces.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<OtherIncome> OtherIncome { get; init; } = [];

    /// <summary>What the profit pays before the household sees it. Your own tables: the service is a calculator, not tax advice.</summary>
    public TaxRules Tax { get; init; } = new() { Kind = TaxKind.None };

    /// <summary>
    /// Whether the profile's amounts hold sales tax that can be claimed back: "claimable-tax" or "no-claimable-tax". Absent: not said, and answers
    /// for channels with sales tax warn of it.
    /// </summary>
    /// <example>no-claimable-tax</example>
    public CostsInclude? CostsInclude { get; init; }

    /// <summary>Stock price list, used by designs.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<StockMaterial> Materials { get; init; } = [];

    /// <summary>What else is scarce, such as kiln loads a year.</summary>
    [MaxLength(Documents.Limits.Lines)]
    public IReadOnlyList<ResourceLimit> Limits { get; init; } = [];

    /// <summary>The studio's own rule for retail prices.</summary>
    public PriceRule PriceRule { get; init; } = new();

    /// <summary>
    /// "statements" if the profile was drafted from statements: answers then warn as long as it has a benchShare of 1 or no tax, because no bank
    /// knows these. Take it out if both are really so.
    /// </summary>
    /// <example>statements</example>
    public DraftSource? DraftedFrom { get; init; }
}
