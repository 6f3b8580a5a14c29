using PriceFloor.Evidence.Demand;

namespace PriceFloor.Evidence.Prices;

/// <summary>
/// The price to ask next: one step towards the best, no further beyond what was ever asked, and not sooner than a month after the last change.
/// </summary>
/// <param name="Price">On the channel's grid; null where there is none to offer.</param>
/// <param name="Reason">Why there is none.</param>
public sealed record NextPrice(decimal? Price, NextPriceReason? Reason = null)
{
    /// <summary>The most that a price goes beyond the highest ever asked for the design.</summary>
    public const decimal Step = 0.15m;

    /// <summary>Days that a price stands at least.</summary>
    public const int LeastDays = 30;

    internal static NextPrice Of(decimal best, OfferedDesign offer, ChannelPrices prices, bool mayBeBelowFloor, bool neverFalls)
    {
        if (offer.Prices.Count > 1 && offer.Prices[^1].From.AddDays(LeastDays) > offer.To)
            return new NextPrice(null, NextPriceReason.ChangedLately);
        var most = offer.HighestAsked is { } highest ? decimal.Min(best, highest * (1 + Step)) : best;
        var next = prices.Terms.Grid.Last(most);
        if (neverFalls && offer.Price is { } present && !(next >= present))
            next = present;
        return next is null ? new NextPrice(null, NextPriceReason.NoAllowedPrice)
            : next < prices.FloorPrice && !mayBeBelowFloor ? new NextPrice(null, NextPriceReason.FloorBeyondOneStep)
            : new NextPrice(next);
    }
}

/// <summary>Why there is no next price.</summary>
public enum NextPriceReason
{
    /// <summary>One step from what was asked is still below the floor price.</summary>
    FloorBeyondOneStep,

    /// <summary>The price changed in the last 30 days.</summary>
    ChangedLately,

    /// <summary>The channel allows no price so low.</summary>
    NoAllowedPrice,
}
