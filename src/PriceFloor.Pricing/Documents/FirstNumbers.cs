using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>The eight numbers that a first floor needs, and the complete documents made from them.</summary>
public sealed record FirstNumbers
{
    /// <summary>ISO 4217 code of every amount.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Limits.CurrencyPattern)]
    public required string Currency { get; init; }

    /// <summary>All that the business pays in a year.</summary>
    /// <example>24000.00</example>
    [Money]
    public required decimal ExpensesPerYear { get; init; }

    /// <summary>What the maker lives on, a month.</summary>
    /// <example>3000.00</example>
    [Money]
    public required decimal LivingPerMonth { get; init; }

    /// <summary>Weeks worked in the year: above 0, at most 52.</summary>
    /// <example>50</example>
    [Quantity(Above = true, Maximum = "52")]
    public required decimal WeeksPerYear { get; init; }

    /// <summary>Days worked in a week: above 0, at most 7.</summary>
    /// <example>5</example>
    [Quantity(Above = true, Maximum = "7")]
    public required decimal DaysPerWeek { get; init; }

    /// <summary>Hours worked in a day: above 0, at most 24.</summary>
    /// <example>8</example>
    [Quantity(Above = true, Maximum = "24")]
    public required decimal HoursPerDay { get; init; }

    /// <summary>Pieces made a working day, averaged over all of them, packing and book-keeping days included.</summary>
    /// <example>4</example>
    [Quantity(Above = true)]
    public required decimal PiecesPerDay { get; init; }

    /// <summary>The share of the profit that goes in tax, as the maker's own figure; below 1.</summary>
    /// <example>0.2</example>
    [Share(Maximum = "0.9999")]
    public required decimal TaxRate { get; init; }

    /// <summary>The studio year of these numbers.</summary>
    public CostProfile Profile(DateOnly yearStart) => new()
    {
        Name = "First figures",
        Currency = Currency,
        YearStart = yearStart,
        Calendar = new StudioCalendar { WeeksPerYear = WeeksPerYear, DaysPerWeek = DaysPerWeek, HoursPerDay = HoursPerDay },
        Expenses = [new Expense { Name = "All business expenses", Amount = ExpensesPerYear, Per = Per.Year }],
        Household = [new HouseholdLine { Name = "Living", Amount = LivingPerMonth, Per = Per.Month }],
        Tax = new TaxRules { Kind = TaxKind.Flat, Rate = TaxRate },
    };

    /// <summary>The usual piece of these numbers.</summary>
    /// <param name="profile">The key under which the profile will be stored.</param>
    public Design Design(string profile) =>
        new() { Name = "The usual piece", Profile = profile, Making = new Making { PiecesPerDay = PiecesPerDay } };
}
