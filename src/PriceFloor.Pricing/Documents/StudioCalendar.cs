namespace PriceFloor.Pricing.Documents;

/// <summary>The working year: weeks, days, hours, and how much of a day is spent making.</summary>
public sealed record StudioCalendar
{
    /// <summary>Weeks worked in the year: above 0, at most 52.</summary>
    /// <example>48</example>
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

    /// <summary>The share of a working day spent making saleable pieces; the rest is packing, books, selling, cleaning.</summary>
    /// <example>0.65</example>
    [Share]
    public decimal BenchShare { get; init; } = 1;
}
