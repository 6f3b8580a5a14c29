using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The cash of each month, and what of it is not yet the maker's: taxes that are set aside, deposits, sales tax.</summary>
internal sealed class CashFormulas<T> where T : IFigure<T>
{
    private readonly Plan _plan;
    private readonly PlanFormulas<T> _year;
    private readonly SoldByMonthFormulas<T> _sold;
    private readonly ReceiptFormulas<T> _receipts;

    public CashFormulas(Plan plan, PlanFormulas<T> year, SoldByMonthFormulas<T> sold, T[] materials, ReceiptFormulas<T> receipts,
        BillFormulas<T> bills)
    {
        (_plan, _year, _sold, _receipts) = (plan, year, sold, receipts);
        Tax = T.Named("planTax", year.OnProfit.Total);
        TaxPaid = Monthly.Sum("taxPaid", plan.TaxPaid, (payment, month) => payment.Month == month + 1,
            (payment, _) => payment.Amount is { } amount ? amount : payment.Share!.Value * Tax);
        Cash = new T[13];
        Cash[0] = T.Named("cash", 0, plan.Opening.Cash);
        for (var month = 0; month < 12; month++)
            Cash[month + 1] = T.Named("cash", month + 1, Cash[month] + receipts.Receipts[month] + receipts.Collected[month] + bills.OtherIncome[month]
                - materials[month] - bills.Bills[month] - bills.Household[month] - bills.Bought[month] - TaxPaid[month] - receipts.TaxPaid[month]);
        TaxPaidInAll = T.Named("taxPaidInAll", Formulas.Sum(TaxPaid));
    }

    /// <summary>The tax on the plan's profit.</summary>
    public T Tax { get; }

    public T[] TaxPaid { get; }

    public T TaxPaidInAll { get; }

    /// <summary>
    /// The pot: each month its part of the year's tax goes in, by what its sales leave, and payments come out. The first is for the year's start.
    /// Below 0: that much has been paid ahead. Computed when first asked for.
    /// </summary>
    public T[] Aside => field ??= AsideByMonth();

    /// <summary>When the month ends; the first is for the start of the year.</summary>
    public T[] Cash { get; }

    /// <summary>What of it is the maker's own; computed when first asked for.</summary>
    public T[] Free => field ??= Monthly.Of("free", month =>
        Cash[month + 1] - T.Max(0, Aside[month + 1]) - _receipts.Deposits[month + 1] - _receipts.TaxHeld[month + 1]);

    private T[] AsideByMonth()
    {
        var aside = new T[13];
        aside[0] = T.Named("taxSetAside", 0, _plan.Opening.TaxSetAside);
        for (var month = 0; month < 12; month++)
        {
            var earned = _year.Contribution.Value > 0 && _sold.Contribution[month].Value != 0
                ? aside[month] + Tax * _sold.Contribution[month] / _year.Contribution
                : aside[month];
            aside[month + 1] = T.Named("taxSetAside", month + 1, earned - TaxPaid[month]);
        }

        return aside;
    }
}
