using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Plans;

/// <summary>One month of a planned year. Balances are those at its end, each rounded by itself, so they may be a cent beside the flows.</summary>
public sealed record PlanMonthAnswer
{
    /// <summary>1 to 12, of the profile's year.</summary>
    /// <example>9</example>
    [WholeNumber]
    public required decimal Month { get; init; }

    /// <summary>Its first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Bench hours that its sales took, whenever they were worked; up to four decimals.</summary>
    public required decimal NeedHours { get; init; }

    /// <summary>Bench hours that there are.</summary>
    public required decimal Capacity { get; init; }

    /// <summary>Bench hours that are worked.</summary>
    public required decimal MadeHours { get; init; }

    /// <summary>Bench hours of work that must lie ready when it begins, without the opening stock.</summary>
    public required decimal StockHours { get; init; }

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

    /// <summary>What is set aside for income tax.</summary>
    public required decimal TaxSetAside { get; init; }

    /// <summary>Income tax that has been paid before it was earned for.</summary>
    public required decimal TaxPaidAhead { get; init; }

    /// <summary>Deposits for sales after the month.</summary>
    public required decimal DepositsHeld { get; init; }

    /// <summary>Sales tax that is not yet paid on.</summary>
    public required decimal SalesTaxHeld { get; init; }

    /// <summary>Cash.</summary>
    public required decimal Cash { get; init; }

    /// <summary>Cash less what is not yet the maker's: tax set aside, deposits and sales tax.</summary>
    public required decimal Free { get; init; }

    /// <summary>With lines=true: pieces that each line sells in the month, in the order of the plan's lines; up to four decimals.</summary>
    /// <example>[20.8, 26]</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<decimal>? Lines { get; init; }
}
