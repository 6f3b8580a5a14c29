namespace PriceFloor.Evidence.Demand;

/// <summary>What the time is in which a design could be bought.</summary>
public enum Exposure
{
    /// <summary>Days on which a piece was there.</summary>
    InStock,

    /// <summary>Days on which it was listed.</summary>
    Listed,

    /// <summary>Days from the first sale to the last.</summary>
    FirstToLastSale,

    /// <summary>Fairs.</summary>
    Events,
}
