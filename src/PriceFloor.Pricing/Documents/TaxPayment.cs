namespace PriceFloor.Pricing.Documents;

/// <summary>Tax that is paid in a month: an amount, or a share of the tax on the year that is planned.</summary>
public sealed record TaxPayment
{
    /// <summary>Month of the profile's year, 1 to 12.</summary>
    /// <example>4</example>
    [Pieces(Minimum = "1", Maximum = "12")]
    public required decimal Month { get; init; }

    /// <summary>The amount, such as what the year before left to pay.</summary>
    /// <example>2300.00</example>
    [Money]
    public decimal? Amount { get; init; }

    /// <summary>A share of this year's tax.</summary>
    /// <example>0.25</example>
    [Share]
    public decimal? Share { get; init; }
}
