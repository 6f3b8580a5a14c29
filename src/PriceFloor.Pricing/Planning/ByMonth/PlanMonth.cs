using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>One month of a planned year, unrounded.</summary>
public sealed class PlanMonth
{
    private readonly ByMonthFormulas<Figure> _formulas;
    private readonly int _index;

    internal PlanMonth(ByMonthFormulas<Figure> formulas, int index, DateOnly from) => (_formulas, _index, From) = (formulas, index, from);

    /// <summary>1 to 12, of the profile's year.</summary>
    public int Number => _index + 1;

    /// <summary>Its first day.</summary>
    public DateOnly From { get; }

    /// <summary>Bench hours that its sales took, whenever they were worked.</summary>
    public decimal NeedHours => _formulas.Sold.Hours[_index].Value;

    /// <summary>The same of what the opening stock does not serve.</summary>
    public decimal HoursToMake => _formulas.Making.Needed[_index].Value;

    /// <summary>Bench hours that there are.</summary>
    public decimal Capacity => _formulas.Making.Capacity[_index].Value;

    /// <summary>Bench hours that are worked.</summary>
    public decimal MadeHours => _formulas.Making.Made[_index].Value;

    /// <summary>Hours of work that must lie ready when it begins, without the opening stock.</summary>
    public decimal StockHours => _formulas.Making.Stock[_index].Value;

    /// <summary>What its sales leave toward what bench time must recover.</summary>
    public decimal Contribution => _formulas.Sold.Contribution[_index].Value;

    public decimal Receipts => _formulas.Receipts.Receipts[_index].Value;

    public decimal OtherIncome => _formulas.Bills.OtherIncome[_index].Value;

    public decimal Materials => _formulas.Making.Materials[_index].Value;

    public decimal Bills => _formulas.Bills.Bills[_index].Value;

    public decimal Household => _formulas.Bills.Household[_index].Value;

    public decimal Bought => _formulas.Bills.Bought[_index].Value;

    public decimal TaxPaid => _formulas.Cash.TaxPaid[_index].Value;

    public decimal SalesTaxPaid => _formulas.Receipts.TaxPaid[_index].Value;

    /// <summary>The pot for taxes when it ends; below 0 if more has been paid than has been earned for.</summary>
    public decimal Aside => _formulas.Cash.Aside[_index + 1].Value;

    public decimal DepositsHeld => _formulas.Receipts.Deposits[_index + 1].Value;

    public decimal SalesTaxHeld => _formulas.Receipts.TaxHeld[_index + 1].Value;

    public decimal Cash => _formulas.Cash.Cash[_index + 1].Value;

    /// <summary>Cash less what is not yet the maker's.</summary>
    public decimal Free => _formulas.Cash.Free[_index].Value;

    /// <summary>Pieces of a line that are sold in it.</summary>
    public decimal SoldOf(int line) => _formulas.Year.Lines[line].Units.Value * _formulas.Sold.ShareOf(line, _index).Value;
}
