namespace PriceFloor.Api.Plans;

/// <summary>Money that comes in and goes out. The figures of a flow add up to its year's.</summary>
public sealed record PlanFlowsAnswer
{
    /// <summary>What reaches the studio of sales, deposits and what was owed.</summary>
    public required decimal Receipts { get; init; }

    /// <summary>Other income.</summary>
    public required decimal OtherIncome { get; init; }

    /// <summary>Materials, with the hours that work them, less what seconds bring.</summary>
    public required decimal Materials { get; init; }

    /// <summary>Expenses that are not recovered on pieces or by channels, and what is paid out of taxed money.</summary>
    public required decimal Bills { get; init; }

    /// <summary>The household at its full amount.</summary>
    public required decimal Household { get; init; }

    /// <summary>Equipment that goes into use.</summary>
    public required decimal Bought { get; init; }

    /// <summary>Income tax.</summary>
    public required decimal TaxPaid { get; init; }

    /// <summary>Sales tax that is paid on.</summary>
    public required decimal SalesTaxPaid { get; init; }
}
