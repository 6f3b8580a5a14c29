using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Prices;

/// <summary>One thing that can be done with slow stock. All money is unrounded.</summary>
/// <param name="Way">What.</param>
/// <param name="Worth">What it brings a piece; null where it cannot be done, or nothing is known of it.</param>
public sealed record WayOut(Way Way, decimal? Worth)
{
    /// <summary>Why it has no worth.</summary>
    public WayOutReason? Reason { get; init; }

    /// <summary>The price that it asks.</summary>
    public decimal? Price { get; init; }

    /// <summary>What of that price reaches the studio.</summary>
    public decimal? Net { get; init; }

    /// <summary>The chance that a piece is sold at that price: within a year, or in the time that is given for a mark-down.</summary>
    public decimal? Chance { get; init; }

    /// <summary>Of a mark-down: the best price, with its ends.</summary>
    public Estimate? Best { get; init; }

    /// <summary>Of a mark-down: so many full-price sales lost elsewhere, and it was for nothing.</summary>
    public decimal? MayDisplace { get; init; }

    /// <summary>Of a mark-down: what one sale at the full price leaves after materials.</summary>
    public decimal? FullSaleLeaves { get; init; }
}

/// <summary>What can be done with slow stock.</summary>
public enum Way
{
    /// <summary>Waiting for a year at the price that is asked.</summary>
    Hold,

    /// <summary>A lower price.</summary>
    MarkDown,

    /// <summary>Remelting, or taking apart.</summary>
    Rework,

    /// <summary>Selling it as a second.</summary>
    Second,
}

/// <summary>Why a way out has no worth.</summary>
public enum WayOutReason
{
    /// <summary>A gallery has the same design unmarked.</summary>
    UndercutsGallery,

    /// <summary>No price is known.</summary>
    NoPrice,

    /// <summary>It could never be bought, so nothing is known of its demand.</summary>
    NoDemand,

    /// <summary>The best price is not below the one that is asked.</summary>
    NotBelowPrice,
}
