namespace PriceFloor.Pricing.Planning;

/// <summary>A way to close a planned year that falls short.</summary>
public enum PlanWay
{
    /// <summary>All prices of the plan higher by one share.</summary>
    RaiseThePrices,

    /// <summary>All units of the plan times one factor.</summary>
    SellMore,

    /// <summary>Less for bench time to recover in the year.</summary>
    SpendLess,

    /// <summary>Further taxable income a year that takes no bench days.</summary>
    EarnTaxableElsewhere,

    /// <summary>Further income a year that is already taxed and takes no bench days.</summary>
    EarnNetElsewhere,

    /// <summary>Never offered: time that is saved closes nothing unless it is sold.</summary>
    WorkFaster,
}
