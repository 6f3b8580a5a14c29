using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Years;

/// <summary>What the year should leave beyond the need.</summary>
public sealed record Surplus
{
    /// <summary>The amount, in the profile's currency.</summary>
    /// <example>2000.00</example>
    [Money]
    public required decimal Amount { get; init; }

    /// <summary>"after": left over when tax is paid; "before": added to the profit that is taxed.</summary>
    public required SurplusTax Tax { get; init; }
}

/// <summary>Whether a wanted surplus is counted after tax or before.</summary>
public enum SurplusTax { After, Before }
