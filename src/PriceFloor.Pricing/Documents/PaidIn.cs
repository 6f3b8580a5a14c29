using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>The months in which a line of the profile is paid; its year is spread evenly over them.</summary>
public sealed record PaidIn
{
    /// <summary>
    /// A JSON Pointer into the profile's expenses, household or otherIncome. In a list a token is an index, or the name of a line, which outlives
    /// insertions.
    /// </summary>
    /// <example>/expenses/Studio and liability insurance</example>
    [MaxLength(Limits.PointerLength)]
    public required string At { get; init; }

    /// <summary>Months of the profile's year, 1 to 12.</summary>
    /// <example>[3]</example>
    [MinLength(1), MaxLength(Limits.Months), Pieces(Minimum = "1", Maximum = "12")]
    public required IReadOnlyList<decimal> Months { get; init; }
}
