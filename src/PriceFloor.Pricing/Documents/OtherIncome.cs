using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>Income that does not come from pieces.</summary>
public sealed record OtherIncome : IRecurring
{
    /// <summary>A name for people.</summary>
    /// <example>Evening classes</example>
    [MaxLength(Documents.Limits.NameLength)]
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
    [Quantity(Maximum = "366")]
    public decimal DaysPerYear { get; init; }
}

/// <summary>Whether other income still has to be taxed.</summary>
public enum IncomeKind { Taxable, Net }
