using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// When the money for a plan's sales comes in, what of it is held as deposits, what is still owed, and the sales tax that comes with it.
/// </summary>
internal sealed class ReceiptFormulas<T> where T : IFigure<T>
{
    private readonly bool _steady;
    private readonly (T Deposit, int Before, int After)[] _terms;

    public ReceiptFormulas(Plan plan, SoldByMonthFormulas<T> sold)
    {
        _steady = plan.Steady;
        _terms = [.. sold.Channels.Select((channel, i) => TermsOf(plan.Terms.FirstOrDefault(terms => terms.Channel == channel), i + 1))];
        IEnumerable<T> OwedIn(Func<OwedToUs, bool> counts) => plan.Opening.OwedToUs.Where(counts).Select(item => (T)item.Amount);
        Receipts = Months("receipts", 0, month => Sum([.. Paid(sold.Proceeds, month), .. OwedIn(item => item.Month - 1 == month)]));
        Collected = Months("salesTaxIn", 0, month => Sum(Paid(sold.SalesTax, month)));
        Deposits = Months("depositsHeld", -1, month => Sum(_terms.SelectMany((terms, channel) =>
            Enumerable.Range(month + 1, terms.Before).Select(later => Share(terms.Deposit, At(sold.Proceeds[channel], later))))));
        Owed = Months("owed", -1, month => Sum(_terms.SelectMany((terms, channel) =>
            Enumerable.Range(month - terms.After + 1, terms.After).Select(earlier => Rest(terms.Deposit, At(sold.Proceeds[channel], earlier))))
                .Concat(OwedIn(item => item.Month - 1 > month))));
        TaxHeld = new T[13];
        TaxPaid = new T[12];
        TaxHeld[0] = T.Named("salesTaxHeld", 0, plan.Opening.SalesTaxHeld);
        for (var month = 0; month < 12; month++)
        {
            TaxPaid[month] = T.Named("salesTaxPaid", month + 1, plan.SalesTaxPaid.Contains(month + 1) ? TaxHeld[month] : 0);
            TaxHeld[month + 1] = T.Named("salesTaxHeld", month + 1, TaxHeld[month] + Collected[month] - TaxPaid[month]);
        }
    }

    /// <summary>What of the plan's sales, and of what was owed from before, reaches the studio in each month.</summary>
    public T[] Receipts { get; }

    /// <summary>Sales tax that comes in.</summary>
    public T[] Collected { get; }

    /// <summary>Deposits received for sales after the month; the first is for the start of the year.</summary>
    public T[] Deposits { get; }

    /// <summary>What others owe when the month ends; the first is for the start of the year.</summary>
    public T[] Owed { get; }

    /// <summary>Sales tax that is held when the month ends; the first is for the start of the year.</summary>
    public T[] TaxHeld { get; }

    /// <summary>Sales tax that is paid on.</summary>
    public T[] TaxPaid { get; }

    private static (T, int, int) TermsOf(PlanTerms? terms, int number)
    {
        if (terms is null)
            return (0, 0, 0);
        var deposit = terms.DepositShare == 0 ? 0 : T.Named("deposit", number, terms.DepositShare);
        return (deposit, (int)terms.DepositMonthsBefore, (int)terms.PaidAfterMonths);
    }

    private static T[] Months(string symbol, int from, Func<int, T> figure)
    {
        var months = new T[12 - from];
        for (var i = 0; i < months.Length; i++)
            months[i] = T.Named(symbol, i + from + 1, figure(i + from));
        return months;
    }

    private static T Sum(IEnumerable<T> figures) => Formulas.Sum(figures.Where(figure => figure.Value != 0));

    private static T Rest(T deposit, T sold) => sold.Value == 0 || deposit.Value == 0 ? sold : (1 - deposit) * sold;

    private static T Share(T deposit, T sold) => sold.Value == 0 || deposit.Value == 0 ? 0 : deposit * sold;

    /// <summary>(1-d) of the sales whose rest is due in the month, and d of those whose deposit is.</summary>
    private IEnumerable<T> Paid(IReadOnlyList<T[]> sales, int month)
    {
        foreach (var (channel, terms) in _terms.Index())
        {
            yield return Rest(terms.Deposit, At(sales[channel], month - terms.After));
            yield return Share(terms.Deposit, At(sales[channel], month + terms.Before));
        }
    }

    /// <summary>The sales of a month; those of another year only if this one goes round.</summary>
    private T At(T[] sales, int month) => month is >= 0 and < 12 ? sales[month] : _steady ? sales[(month + 12) % 12] : 0;
}
