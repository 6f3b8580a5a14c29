namespace PriceFloor.Pricing.Planning;

/// <summary>A way to fix a price that does not carry its part of the year.</summary>
public enum RemedyKind
{
    /// <summary>The channel's floor price.</summary>
    RaiseThePrice,

    /// <summary>Bench minutes a sold piece; time that is not mayBeHurried stays as it is.</summary>
    WorkFaster,

    /// <summary>Less for bench time to recover in the year.</summary>
    SpendLess,

    /// <summary>Materials a sold piece.</summary>
    CheaperMaterials,

    /// <summary>The good share; with steps that of the step that loses most.</summary>
    LoseFewer,

    /// <summary>Further taxable income a year that takes no bench days.</summary>
    EarnTaxableElsewhere,

    /// <summary>Further income a year that is already taxed and takes no bench days.</summary>
    EarnNetElsewhere,

    /// <summary>A new design for this price: the bench minutes it may take with these materials.</summary>
    NewDesignMinutes,

    /// <summary>A new design for this price: the materials it may use with these minutes.</summary>
    NewDesignMaterials,

    /// <summary>Working hours a week; over 48 flagged, never offered as the answer.</summary>
    MoreHours,

    /// <summary>What the buyer is charged for shipping an order.</summary>
    ChargeMoreShipping,

    /// <summary>Average pieces in an order.</summary>
    MorePiecesAnOrder,

    /// <summary>The share that a shop or gallery keeps.</summary>
    LowerShopShare,

    /// <summary>Pieces that a stall sells.</summary>
    FullerStall,

    /// <summary>The channel's usual discount.</summary>
    LessDiscount,

    /// <summary>The other channels on which the piece holds.</summary>
    SellElsewhere,
}
