using System.Collections.Immutable;
using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>
/// The year month by month: what is sold and when, when it is paid for, and when bills and tax are paid. Months are 1 to 12 of the profile's year. A
/// plan never moves a floor.
/// </summary>
public sealed record Plan
{
    /// <summary>Key of the cost profile whose year is planned.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>What is sold in the year: 1 to 500 lines.</summary>
    [MinLength(1), MaxLength(Limits.Lines)]
    public required IReadOnlyList<PlanLine> Lines { get; init; }

    /// <summary>
    /// Seasons by name: twelve weights of at least 0, one of them above 0. Only the proportions count, so they may be percentages, indices or pieces.
    /// </summary>
    /// <example>{"gifts": [4, 5, 6, 6, 8, 6, 5, 5, 7, 10, 19, 19]}</example>
    [MaxLength(Limits.Seasons), Quantity]
    public IReadOnlyDictionary<string, IReadOnlyList<decimal>> Seasons { get; init; } =
        ImmutableSortedDictionary<string, IReadOnlyList<decimal>>.Empty;

    /// <summary>How the year's bench hours are spread over its months: twelve weights, such as weeks of work. Absent: evenly.</summary>
    /// <example>[4, 4, 4, 4, 4, 4, 3, 2.5, 4, 4.5, 4.5, 3.5]</example>
    [MaxLength(Limits.Lines), Quantity]
    public IReadOnlyList<decimal>? Work { get; init; }

    /// <summary>When a channel pays; at most one item for each. A channel without one pays in the month of the sale.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<PlanTerms> Terms { get; init; } = [];

    /// <summary>In which months lines of the profile are paid, if the usual months are wrong.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<PaidIn> PaidIn { get; init; } = [];

    /// <summary>When tax is paid. Your own figures: the service is a calculator, not tax advice.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<TaxPayment> TaxPaid { get; init; } = [];

    /// <summary>What is there when the year begins.</summary>
    public Opening Opening { get; init; } = new();

    /// <summary>The least cash that should be there at any time.</summary>
    /// <example>2000.00</example>
    [Money]
    public decimal Reserve { get; init; }

    /// <summary>The months in which the sales tax is paid that was held when the month before ended.</summary>
    /// <example>[3, 6, 9, 12]</example>
    [MaxLength(Limits.Months), Pieces(Minimum = "1", Maximum = "12")]
    public IReadOnlyList<decimal> SalesTaxPaid { get; init; } = [];

    /// <summary>
    /// True for a year like those before and after it: deposits, late payments and making ahead go round from its end to its start. False: nothing
    /// comes from before but what <c>opening</c> says.
    /// </summary>
    public bool Steady { get; init; }

    /// <summary>Bench hours of the year kept for work outside the lines.</summary>
    /// <example>60</example>
    [Quantity]
    public decimal HoursKeptBack { get; init; }
}
