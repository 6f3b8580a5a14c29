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
    private readonly IReadOnlyList<T[]> _proceeds;
    private readonly IReadOnlyList<OwedToUs> _owedBefore;

    public ReceiptFormulas(Plan plan, SoldByMonthFormulas<T> sold)
    {
        (_steady, _proceeds, _owedBefore) = (plan.Steady, sold.Proceeds, plan.Opening.OwedToUs);
        _terms = [.. sold.Channels.Select((channel, i) => TermsOf(plan.Terms.FirstOrDefault(terms => terms.Channel == channel), i + 1))];
        Receipts = Months("receipts", 0, month => Paid(_proceeds, month).With(_owedBefore, item => item.Month - 1 == month).Sum);
        Collected = Months("salesTaxIn", 0, month => Paid(sold.SalesTax, month).Sum);
        TaxHeld = new T[13];
        TaxPaid = new T[12];
        TaxHeld[0] = T.Named("salesTaxHeld", 0, plan.Opening.SalesTaxHeld);
        for (var month = 0; month < 12; month++)
        {
            TaxPaid[month] = T.Named("salesTaxPaid", month + 1, plan.SalesTaxPaid.Contains(month + 1) ? TaxHeld[month] : 0);
            TaxHeld[month + 1] = T.Named("salesTaxHeld", month + 1, TaxHeld[month] + Collected[month] - TaxPaid[month]);
        }
    }

    /// <summary>The share of each channel's sales that comes before them; 0 without a symbol if none does.</summary>
    public IEnumerable<T> DepositShares => _terms.Select(terms => terms.Deposit);

    /// <summary>What of the plan's sales, and of what was owed from before, reaches the studio in each month.</summary>
    public T[] Receipts { get; }

    /// <summary>Sales tax that comes in.</summary>
    public T[] Collected { get; }

    /// <summary>Deposits received for sales after the month; the first is for the start of the year. Computed when first asked for.</summary>
    public T[] Deposits => field ??= Months("depositsHeld", -1, month => DepositsFor(_proceeds, month).Sum);

    /// <summary>What others owe when the month ends; the first is for the start of the year. Computed when first asked for.</summary>
    public T[] Owed => field ??=
        Months("owed", -1, month => StillDue(_proceeds, month).With(_owedBefore, item => item.Month - 1 > month).Sum);

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

    private static T Rest(T deposit, T sold) => sold.Value == 0 || deposit.Value == 0 ? sold : (1 - deposit) * sold;

    private static T Share(T deposit, T sold) => sold.Value == 0 || deposit.Value == 0 ? 0 : deposit * sold;

    /// <summary>(1-d) of the sales whose rest is due in the month, and d of those whose deposit is.</summary>
    private Added Paid(IReadOnlyList<T[]> sales, int month)
    {
        var added = new Added();
        for (var channel = 0; channel < _terms.Length; channel++)
        {
            var (deposit, before, after) = _terms[channel];
            added = added.With(Rest(deposit, At(sales[channel], month - after))).With(Share(deposit, At(sales[channel], month + before)));
        }

        return added;
    }

    /// <summary>Deposits that have come in for sales after the month.</summary>
    private Added DepositsFor(IReadOnlyList<T[]> sales, int month)
    {
        var added = new Added();
        for (var channel = 0; channel < _terms.Length; channel++)
            for (var later = month + 1; later <= month + _terms[channel].Before; later++)
                added = added.With(Share(_terms[channel].Deposit, At(sales[channel], later)));
        return added;
    }

    /// <summary>The rest of sales up to the month that is not yet paid.</summary>
    private Added StillDue(IReadOnlyList<T[]> sales, int month)
    {
        var added = new Added();
        for (var channel = 0; channel < _terms.Length; channel++)
            for (var earlier = month - _terms[channel].After + 1; earlier <= month; earlier++)
                added = added.With(Rest(_terms[channel].Deposit, At(sales[channel], earlier)));
        return added;
    }

    /// <summary>The sales of a month; those of another year only if this one goes round.</summary>
    private T At(T[] sales, int month) => month is >= 0 and < 12 ? sales[month] : _steady ? sales[(month + 12) % 12] : 0;

    /// <summary>Figures that are added up; what is nothing is left out.</summary>
    private readonly struct Added
    {
        private readonly bool _isAny;
        private readonly T _sum;

        private Added(T sum) => (_isAny, _sum) = (true, sum);

        public T Sum => _isAny ? _sum : 0;

        public Added With(T figure) => figure.Value == 0 ? this : new Added(_isAny ? _sum + figure : figure);

        public Added With(IReadOnlyList<OwedToUs> owed, Func<OwedToUs, bool> counts)
        {
            var added = this;
            for (var i = 0; i < owed.Count; i++)
                if (counts(owed[i]))
                    added = added.With((T)owed[i].Amount);
            return added;
        }
    }
}
