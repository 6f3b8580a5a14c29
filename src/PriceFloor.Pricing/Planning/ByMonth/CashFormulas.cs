using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The cash of each month, and what of it is not yet the maker's: taxes that are set aside, deposits, sales tax.</summary>
internal sealed class CashFormulas<T> where T : IFigure<T>
{
    public CashFormulas(Plan plan, PlanFormulas<T> year, SoldByMonthFormulas<T> sold, T[] materials, ReceiptFormulas<T> receipts,
        BillFormulas<T> bills)
    {
        Tax = T.Named("planTax", year.OnProfit.Total);
        TaxPaid = new T[12];
        (Aside, Cash, Free) = (new T[13], new T[13], new T[12]);
        Aside[0] = T.Named("taxSetAside", 0, plan.Opening.TaxSetAside);
        Cash[0] = T.Named("cash", 0, plan.Opening.Cash);
        for (var month = 0; month < 12; month++)
        {
            TaxPaid[month] = T.Named("taxPaid", month + 1, PaidIn(plan.TaxPaid, month + 1));
            var earned = year.Contribution.Value > 0 && sold.Contribution[month].Value != 0
                ? Aside[month] + Tax * sold.Contribution[month] / year.Contribution
                : Aside[month];
            Aside[month + 1] = T.Named("taxSetAside", month + 1, earned - TaxPaid[month]);
            Cash[month + 1] = T.Named("cash", month + 1, Cash[month] + receipts.Receipts[month] + receipts.Collected[month] + bills.OtherIncome[month]
                - materials[month] - bills.Bills[month] - bills.Household[month] - bills.Bought[month] - TaxPaid[month] - receipts.TaxPaid[month]);
            Free[month] = T.Named("free", month + 1,
                Cash[month + 1] - T.Max(0, Aside[month + 1]) - receipts.Deposits[month + 1] - receipts.TaxHeld[month + 1]);
        }

        TaxPaidInAll = T.Named("taxPaidInAll", Formulas.Sum(TaxPaid));
    }

    /// <summary>The tax on the plan's profit.</summary>
    public T Tax { get; }

    public T[] TaxPaid { get; }

    public T TaxPaidInAll { get; }

    /// <summary>
    /// The pot: each month its part of the year's tax goes in, by what its sales leave, and payments come out. The first is for the year's start.
    /// Below 0: that much has been paid ahead.
    /// </summary>
    public T[] Aside { get; }

    /// <summary>When the month ends; the first is for the start of the year.</summary>
    public T[] Cash { get; }

    public T[] Free { get; }

    private T PaidIn(IReadOnlyList<TaxPayment> payments, int month) => Formulas.Sum(payments, payment => payment.Month == month,
        (payment, _) => payment.Amount is { } amount ? amount : payment.Share!.Value * Tax);
}
