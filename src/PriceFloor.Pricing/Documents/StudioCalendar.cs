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

    /// <summary>
    /// The share of a working day spent making saleable pieces. What neither this nor <c>sellingShare</c> covers is books, cleaning and
    /// everything else: all hours carry it.
    /// </summary>
    /// <example>0.65</example>
    [Share]
    public decimal BenchShare { get; init; } = 1;

    /// <summary>
    /// The share of a working day spent on selling work that channels are charged for: packing orders, standing at stalls, answering buyers.
    /// At most 1 together with <c>benchShare</c>.
    /// </summary>
    /// <example>0.10</example>
    [Share]
    public decimal SellingShare { get; init; }

    /// <summary>
    /// Of all bench, selling and helpers' hours, the share that in a normal year has work that sells (normal capacity, IAS 2 section 13).
    /// At least 0.0001.
    /// </summary>
    /// <example>0.85</example>
    [Share(Minimum = "0.0001")]
    public decimal NormalUse { get; init; } = 1;
}
