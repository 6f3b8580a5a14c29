using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// One price for a piece on several channels: the lowest that each of them allows and on which it carries its share everywhere. With 61.00 on a shop
/// whose prices are whole, and 64.20 needed at a gallery: 65.00.
/// </summary>
public sealed record OnePrice
{
    /// <summary>Candidates are tried up to here: steps of prices repeat long before.</summary>
    private const int MostTries = 100_000;

    private OnePrice(decimal floorPrice, decimal targetPrice) => (FloorPrice, TargetPrice) = (floorPrice, targetPrice);

    /// <summary>The lowest common price that carries its share on all of them.</summary>
    public decimal FloorPrice { get; }

    /// <summary>The lowest common price that also reaches the target on all of them.</summary>
    public decimal TargetPrice { get; }

    /// <summary>Refused with <c>no-price</c> if no price up to 10^12 is allowed on all of the channels.</summary>
    /// <param name="channels">The piece's prices on at least one channel, all of one currency.</param>
    public static Outcome<OnePrice> Of(IReadOnlyList<ChannelPrices> channels) =>
        Lowest(channels, prices => prices.FloorPrice) is { } floor && Lowest(channels, prices => prices.TargetPrice) is { } target
            ? new OnePrice(floor, target)
            : new Fault("", FaultCodes.NoPrice, "No price is allowed on all of these channels; change the priceStep or priceEnding of one of them.");

    private static decimal? Lowest(IReadOnlyList<ChannelPrices> channels, Func<ChannelPrices, decimal> from)
    {
        var (least, coarsest) = (channels.Max(from), channels.MaxBy(prices => prices.Terms.Grid.Step)!.Terms.Grid);
        var price = coarsest.First(least, price => price >= least);
        for (var tries = 0; price is { } candidate && tries < MostTries; tries++, price += coarsest.Step)
            if (channels.All(prices => prices.Terms.Grid.Allows(candidate)))
                return candidate <= Documents.Limits.HighestPrice ? candidate : null;
        return null;
    }
}
