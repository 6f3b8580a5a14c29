namespace PriceFloor.Evidence.Decisions;

/// <summary>The numbers of the rules: the trade's rules of thumb, not statistics.</summary>
public static class DecisionRules
{
    /// <summary>With fewer orders: wait.</summary>
    public const int FewOrders = 8;

    /// <summary>With fewer days on offer: wait.</summary>
    public const int FewDays = 90;

    /// <summary>Sold out on so many of the days on offer: raise.</summary>
    public const decimal SoldOutShare = 0.25m;

    /// <summary>Demand of the next days beyond what is there and can be made, by so much: raise.</summary>
    public const decimal DemandOverStock = 1.25m;

    /// <summary>Days of that demand.</summary>
    public const int NextDays = 90;

    /// <summary>A floor price no more than so much above the present price: raise.</summary>
    public const decimal RaiseWithin = 1.15m;
}
