namespace PriceFloor.Pricing.Documents;

/// <summary>What became of an issued quote.</summary>
public sealed record QuoteOutcome
{
    /// <summary>What became of it.</summary>
    public required QuoteResult Result { get; init; }

    /// <summary>The day of it. Absent: the day on which it is stored, in UTC.</summary>
    /// <example>2027-02-01</example>
    public DateOnly? On { get; init; }
}

/// <summary>The client accepted or declined it, or the maker withdrew it.</summary>
public enum QuoteResult { Accepted, Declined, Withdrawn }
