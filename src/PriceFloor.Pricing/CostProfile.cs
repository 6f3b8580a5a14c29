using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing;

/// <summary>One studio year, always twelve full months: all that the pieces must pay for, and the hours there are to make them in.</summary>
public sealed record CostProfile
{
    /// <summary>A name for people.</summary>
    /// <example>Year 2027</example>
    [MaxLength(Pricing.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>ISO 4217 code of every amount in the profile and in its designs.</summary>
    /// <example>USD</example>
    [MaxLength(3)]
    public required string Currency { get; init; }

    /// <summary>First day of the year; the day of the month is ignored. Absent: 1 January of this year, or what is stored.</summary>
    /// <example>2027-01-01</example>
    public DateOnly? YearStart { get; init; }

    /// <summary>The working year.</summary>
    public required StudioCalendar Calendar { get; init; }

    /// <summary>Paid hands at the bench: their wage is an expense, their hours are hours.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<Helper> Helpers { get; init; } = [];

    /// <summary>What the business pays.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<Expense> Expenses { get; init; } = [];

    /// <summary>What wears out; its depreciation in this year is an expense.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<Equipment> Equipment { get; init; } = [];

    /// <summary>The least that the maker wants to take home, whoever else pays for the household.</summary>
    public Pay? Pay { get; init; }

    /// <summary>Of the finished pieces, the share that ever sells at its price; the rest stays, is given away or shown. At least 0.0001.</summary>
    /// <example>0.95</example>
    [Share(Least = "0.0001")]
    public decimal SoldShare { get; init; } = 1;

    /// <summary>What the maker lives on.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<HouseholdLine> Household { get; init; } = [];

    /// <summary>Income that does not come from pieces.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<OtherIncome> OtherIncome { get; init; } = [];

    /// <summary>What the profit pays before the household sees it. Your own tables: the service is a calculator, not tax advice.</summary>
    public TaxRules Tax { get; init; } = new() { Kind = TaxKind.None };

    /// <summary>Stock price list, used by designs.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<StockMaterial> Materials { get; init; } = [];

    /// <summary>What else is scarce, such as kiln loads a year.</summary>
    [MaxLength(Pricing.Limits.Lines)]
    public IReadOnlyList<ResourceLimit> Limits { get; init; } = [];

    /// <summary>The studio's own rule for retail prices.</summary>
    public PriceRule PriceRule { get; init; } = new();
}

/// <summary>The working year: weeks, days, hours, and how much of a day is spent making.</summary>
public sealed record StudioCalendar
{
    /// <summary>Weeks worked in the year: above 0, at most 52.</summary>
    /// <example>48</example>
    [Quantity(Above = true, Most = "52")]
    public required decimal WeeksPerYear { get; init; }

    /// <summary>Days worked in a week: above 0, at most 7.</summary>
    /// <example>5</example>
    [Quantity(Above = true, Most = "7")]
    public required decimal DaysPerWeek { get; init; }

    /// <summary>Hours worked in a day: above 0, at most 24.</summary>
    /// <example>8</example>
    [Quantity(Above = true, Most = "24")]
    public required decimal HoursPerDay { get; init; }

    /// <summary>The share of a working day spent making saleable pieces; the rest is packing, books, selling, cleaning.</summary>
    /// <example>0.65</example>
    [Share]
    public decimal BenchShare { get; init; } = 1;
}

/// <summary>Paid hands at the bench.</summary>
public sealed record Helper
{
    /// <summary>A name for people.</summary>
    /// <example>Saturday help</example>
    [MaxLength(Pricing.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Hours at the bench in the year.</summary>
    /// <example>120</example>
    [Quantity]
    public required decimal BenchHoursPerYear { get; init; }
}

/// <summary>Where an expense is recovered when it is not spread over bench time.</summary>
public enum TracedTo { Piece, Sale }

/// <summary>The kinds of cost a small business has, made from the lines of public self-employment tax forms.</summary>
public enum CostKind
{
    Advertising, CarAndTravel, CommissionsAndFees, ContractLabour, Depreciation, WagesAndBenefits, Insurance, InterestAndLoans,
    ProfessionalServices, Office, Rent, Repairs, Materials, Packaging, Supplies, TaxesAndLicences, Utilities, HomeWorkspace,
    Training, BadDebtsAndRefunds, BankCharges, Software, ShowsAndStalls, Shipping, Other,
}

/// <summary>What the business pays.</summary>
public sealed record Expense : IRecurring
{
    /// <summary>A name for people.</summary>
    /// <example>Bench rent</example>
    [MaxLength(Pricing.Limits.NameLength)]
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

/// <summary>How a thing's cost is spread over its years.</summary>
public enum DepreciationMethod { StraightLine, DecliningBalance, Percentages }

/// <summary>The method and what it needs.</summary>
public sealed record DepreciationRule
{
    /// <summary>straight-line needs <c>lifeYears</c>, declining-balance needs <c>rate</c>, percentages needs <c>percentages</c>.</summary>
    public required DepreciationMethod Method { get; init; }

    /// <summary>Years of use, in whole months: twelve times it is a whole number of at least 1.</summary>
    /// <example>8</example>
    [Quantity(Above = true, Most = "1000")]
    public decimal? LifeYears { get; init; }

    /// <summary>Share of the book value lost in a year.</summary>
    /// <example>0.25</example>
    [Share]
    public decimal? Rate { get; init; }

    /// <summary>A published table's row: the share of the full cost for each year of use; together at most 1.</summary>
    /// <example>[0.2, 0.32, 0.192]</example>
    [MaxLength(Pricing.Limits.Bands)]
    [Share]
    public IReadOnlyList<decimal>? Percentages { get; init; }
}

/// <summary>A thing that wears out.</summary>
public sealed record Equipment
{
    /// <summary>A name for people.</summary>
    /// <example>Kiln</example>
    [MaxLength(Pricing.Limits.NameLength)]
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

/// <summary>How often the maker's pay is counted.</summary>
public enum PayPer { Hour, Week, Month, Year }

/// <summary>The least that the maker wants to take home.</summary>
public sealed record Pay
{
    /// <summary>After tax, in the profile's currency.</summary>
    /// <example>14.00</example>
    [Money]
    public required decimal Amount { get; init; }

    /// <summary>Per hour means each hour of the working year, bench or not.</summary>
    public required PayPer Per { get; init; }
}

/// <summary>What the maker lives on.</summary>
public sealed record HouseholdLine : IRecurring
{
    /// <summary>A name for people.</summary>
    /// <example>Home rent</example>
    [MaxLength(Pricing.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The amount each time, in the profile's currency.</summary>
    /// <example>1450.00</example>
    [Money]
    public required decimal Amount { get; init; }

    /// <summary>How often it is paid.</summary>
    public required Per Per { get; init; }

    /// <summary>With <c>per</c> "time": how many times a year.</summary>
    /// <example>8</example>
    [Quantity]
    public decimal? Times { get; init; }

    /// <summary>The share that is really a business expense (a room used as the studio, a shared car): moved there, never counted twice.</summary>
    /// <example>0.12</example>
    [Share]
    public decimal BusinessShare { get; init; }

    /// <summary>What kind of cost its business share is, such as home-workspace or car-and-travel; it counts as covered where there is such a share.</summary>
    public CostKind? CostKind { get; init; }
}

/// <summary>Whether other income still has to be taxed.</summary>
public enum IncomeKind { Taxable, Net }

/// <summary>Income that does not come from pieces.</summary>
public sealed record OtherIncome : IRecurring
{
    /// <summary>A name for people.</summary>
    /// <example>Evening classes</example>
    [MaxLength(Pricing.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The amount each time, in the profile's currency.</summary>
    /// <example>280.00</example>
    [Money]
    public required decimal Amount { get; init; }

    /// <summary>How often it is received.</summary>
    public required Per Per { get; init; }

    /// <summary>With <c>per</c> "time": how many times a year.</summary>
    /// <example>8</example>
    [Quantity]
    public decimal? Times { get; init; }

    /// <summary>"taxable" (classes, renting out a bench) or "net" (already taxed).</summary>
    public required IncomeKind Kind { get; init; }

    /// <summary>Working days that it takes from the bench.</summary>
    /// <example>12</example>
    [Quantity(Most = "366")]
    public decimal DaysPerYear { get; init; }
}

/// <summary>A line of the stock price list.</summary>
public sealed record StockMaterial
{
    /// <summary>The name that designs use.</summary>
    /// <example>clear-rod</example>
    [MaxLength(Pricing.Limits.KeyLength)]
    public required string Material { get; init; }

    /// <summary>What it is counted in.</summary>
    /// <example>kg</example>
    [MaxLength(Pricing.Limits.KeyLength)]
    public string? Unit { get; init; }

    /// <summary>The price of one unit, in the profile's currency.</summary>
    /// <example>38.00</example>
    [Money]
    public required decimal Price { get; init; }
}

/// <summary>What else is scarce.</summary>
public sealed record ResourceLimit
{
    /// <summary>The name that steps use.</summary>
    /// <example>kiln</example>
    [MaxLength(Pricing.Limits.KeyLength)]
    public required string Name { get; init; }

    /// <summary>Loads in a year.</summary>
    /// <example>240</example>
    [Quantity]
    public required decimal LoadsPerYear { get; init; }
}

/// <summary>The studio's own rule for retail prices.</summary>
public sealed record PriceRule
{
    /// <summary>Retail is this many times wholesale; above 0. Twice is common practice.</summary>
    /// <example>2</example>
    [Quantity(Above = true, Most = "1000")]
    public decimal RetailMultiple { get; init; } = 2;
}
