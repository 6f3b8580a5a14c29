namespace PriceFloor.Pricing.Planning;

/// <summary>What a remedy's figures count.</summary>
public enum RemedyMeasure
{
    /// <summary>A listed price in the channel's currency.</summary>
    Price,

    /// <summary>Bench minutes a sold piece.</summary>
    BenchMinutesAPiece,

    /// <summary>Money a year in the profile's currency.</summary>
    MoneyAYear,

    /// <summary>Money a sold piece.</summary>
    MoneyAPiece,

    /// <summary>The share of pieces that come out good.</summary>
    GoodShare,

    /// <summary>Working hours a week.</summary>
    HoursAWeek,

    /// <summary>Money an order in the channel's currency.</summary>
    MoneyAnOrder,

    /// <summary>Pieces in an order, on average.</summary>
    PiecesAnOrder,

    /// <summary>The share of the price that a shop keeps.</summary>
    ShopShare,

    /// <summary>Pieces that one stall sells.</summary>
    PiecesAStall,

    /// <summary>The share that is usually taken off the price.</summary>
    UsualDiscount,

    /// <summary>No figure: channels.</summary>
    Channels,
}
