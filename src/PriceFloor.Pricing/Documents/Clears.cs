namespace PriceFloor.Pricing.Documents;

/// <summary>Pieces that are sold off at a listed price, below the floor if need be: until a day, and no more than so many.</summary>
public sealed record Clears
{
    /// <summary>So many pieces, whole; at least 1. Sales in the log since this listed price was stored count.</summary>
    /// <example>5</example>
    [Pieces(Minimum = "1")]
    public required decimal Pieces { get; init; }

    /// <summary>The last day, UTC.</summary>
    /// <example>2027-08-31</example>
    public required DateOnly Until { get; init; }
}
