namespace PriceFloor.Pricing.Documents;

/// <summary>What the work of an issued quote really took, once it is done.</summary>
public sealed record QuoteActual
{
    /// <summary>All hours: bench, design, fitting, travel, selling; above 0.</summary>
    /// <example>61.5</example>
    [Quantity(Above = true)]
    public required decimal BenchHours { get; init; }

    /// <summary>What materials cost, in the quote's currency.</summary>
    /// <example>371.40</example>
    [Money]
    public decimal? Materials { get; init; }

    /// <summary>Whole pieces that were started, trials left out.</summary>
    /// <example>36</example>
    [Pieces]
    public decimal? Starts { get; init; }

    /// <summary>What the client paid in all, in the quote's currency.</summary>
    /// <example>4200.00</example>
    [Money]
    public decimal? Paid { get; init; }
}
