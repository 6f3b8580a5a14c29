using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>One listed price: what a shop asks for one design on one channel today.</summary>
public sealed record ListedPrice
{
    /// <summary>The listed price, in the channel's currency and with its decimals.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public required decimal Price { get; init; }

    /// <summary>ISO 4217 code; must be the channel's own. Absent: the channel's.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Limits.CurrencyPattern)]
    public string? Currency { get; init; }

    /// <summary>Slow stock that is sold off at this price. Verdicts stay as they are; checks of the price add <c>clearing</c> meanwhile.</summary>
    public Clears? Clears { get; init; }
}
