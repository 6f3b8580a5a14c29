using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What the maker lives on.</summary>
public sealed record HouseholdLine : IRecurring
{
    /// <summary>A name for people.</summary>
    /// <example>Home rent</example>
    [MaxLength(Documents.Limits.NameLength)]
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

    /// <summary>
    /// What kind of cost its business share is, such as home-workspace or car-and-travel; it counts as covered if there is such a share.
    /// </summary>
    public CostKind? CostKind { get; init; }
}
