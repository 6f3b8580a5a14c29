namespace PriceFloor.Pricing.Selling;

/// <summary>
/// Where a price goes, in the order in which it is taken: first what never reaches the studio, then what the piece cost to make, then
/// what its bench time owes. The household comes last because a price that is too low is made up there.
/// </summary>
public enum PricePart
{
    /// <summary>What the channel's usual discount takes off the listed price, with its tax.</summary>
    UsualDiscount,

    /// <summary>VAT or sales tax on the price and on shipping.</summary>
    SalesTax,

    /// <summary>What a shop or gallery keeps.</summary>
    ShopShare,

    /// <summary>Card, marketplace and listing fees.</summary>
    Fees,

    /// <summary>What sending it costs.</summary>
    Shipping,

    /// <summary>Packing, and the stall over the pieces that it sells.</summary>
    PackingAndStall,

    /// <summary>What pieces that come back cost, spread over those that stay sold.</summary>
    Returns,

    /// <summary>Pieces handed over that are never paid for nor come back.</summary>
    Losses,

    /// <summary>One-off cost of the design, spread over the pieces expected of it.</summary>
    Development,

    /// <summary>Materials, less what seconds bring.</summary>
    Materials,

    /// <summary>The part of bench time that pays the year's expenses.</summary>
    Expenses,

    /// <summary>The part of bench time that pays tax on the profit.</summary>
    Tax,

    /// <summary>The part of bench time that the household lives on.</summary>
    Household,

    /// <summary>What is left above the floor; negative when short.</summary>
    AboveFloor,
}
