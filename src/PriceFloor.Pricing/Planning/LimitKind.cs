namespace PriceFloor.Pricing.Planning;

/// <summary>What a limit of the year counts.</summary>
public enum LimitKind
{
    /// <summary>Hours at the bench.</summary>
    BenchHours,

    /// <summary>Loads of a scarce thing, such as a kiln.</summary>
    Loads,

    /// <summary>Hours of selling.</summary>
    SellingHours,

    /// <summary>Pieces that the year's stalls of a channel sell.</summary>
    StallPieces,

    /// <summary>Hours at the bench from the first month through one of the others: what is sold by then must be made by then.</summary>
    HoursThroughMonth,
}
