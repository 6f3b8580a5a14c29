namespace PriceFloor.Evidence.Decisions;

/// <summary>What a decision rests on. Money is unrounded.</summary>
public sealed record DecisionFacts
{
    public required decimal Orders { get; init; }

    public required int DaysOnOffer { get; init; }

    /// <summary>h: what an hour at the bench must earn.</summary>
    public required decimal PerHour { get; init; }

    /// <summary>e_lo, e_hi: what an hour earned; one figure where its minutes have no ends. Null where nothing stayed sold.</summary>
    public required (decimal Low, decimal High)? Earned { get; init; }

    /// <summary>Of the days on offer, the share on which none was there; null where nobody knows.</summary>
    public decimal? SoldOutShare { get; init; }

    /// <summary>Pieces that are as likely as not to be ordered in the next 90 days; null where nobody knows.</summary>
    public decimal? NextPieces { get; init; }

    /// <summary>Pieces that are there and can be made in these days.</summary>
    public decimal PiecesToBeHad { get; init; }

    /// <summary>What is asked; null where no price is known.</summary>
    public decimal? Price { get; init; }

    /// <summary>The floor price as found; null where there is none.</summary>
    public decimal? FloorPrice { get; init; }

    /// <summary>Whether minutes that are enough for the present price have been reached in the best quarter of log entries.</summary>
    public bool EnoughMinutesWereReached { get; init; }

    /// <summary>Orders a week, or an event; null where there is no rate.</summary>
    public decimal? Rate { get; init; }

    /// <summary>The same of the shelf's design in the middle.</summary>
    public decimal? MedianRate { get; init; }

    public decimal Contribution { get; init; }

    /// <summary>Of the hours that are there, the share that all offered designs take; null where nobody knows.</summary>
    public decimal? Scarcity { get; init; }
}
