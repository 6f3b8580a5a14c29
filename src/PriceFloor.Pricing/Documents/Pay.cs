namespace PriceFloor.Pricing.Documents;

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

/// <summary>How often the maker's pay is counted.</summary>
public enum PayPer { Hour, Week, Month, Year }
