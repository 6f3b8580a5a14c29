namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>What lies between the profit of a year and the change of its cash.</summary>
public enum CashPartKind
{
    /// <summary>The profit before tax that the plan brings.</summary>
    Profit,

    /// <summary>An expense that nobody pays in the year.</summary>
    Depreciation,

    /// <summary>Shares of household lines that are expenses: they are paid with the household.</summary>
    BusinessShares,

    /// <summary>The household at its full amount.</summary>
    Household,

    /// <summary>Paid out of taxed money, such as a loan's principal.</summary>
    NotDeductible,

    /// <summary>Other income that is already taxed.</summary>
    NetIncome,

    /// <summary>Income tax that is paid in the year, for whichever year.</summary>
    TaxPaid,

    /// <summary>Equipment that goes into use in the year.</summary>
    EquipmentBought,

    /// <summary>Deposits held at the end less those at the start.</summary>
    DepositsHeld,

    /// <summary>What others owed at the start less what they owe at the end.</summary>
    OwedToUs,

    /// <summary>Materials of opening pieces that were sold: they were paid before.</summary>
    MaterialsInStock,

    /// <summary>Sales tax held at the end less that at the start.</summary>
    SalesTaxHeld,
}
