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
}
