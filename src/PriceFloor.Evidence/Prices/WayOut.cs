using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Prices;

/// <summary>One thing that can be done with slow stock.</summary>
/// <param name="Way">What.</param>
/// <param name="Worth">What it brings a piece, unrounded; null where it cannot be done, or nothing is known of it.</param>
public sealed record WayOut(Way Way, decimal? Worth)
{
    /// <summary>The price that it asks.</summary>
    public decimal? Price { get; init; }

    /// <summary>Of a mark-down: the best price, with its ends.</summary>
    public Estimate? Best { get; init; }

    /// <summary>Of a mark-down: so many full-price sales lost elsewhere, and it was for nothing; unrounded.</summary>
    public decimal? MayDisplace { get; init; }

    /// <summary>Whether a gallery has the same design unmarked.</summary>
    public bool UndercutsGallery { get; init; }
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
