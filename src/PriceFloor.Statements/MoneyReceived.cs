namespace PriceFloor.Statements;

/// <summary>
/// Money received for pieces: payouts often arrive after a marketplace's fees and may include sales tax and postage. It is compared with the draft's
/// required revenue, which comes from the same accounts: fees that were deducted are in neither, and sales tax that was paid on is deducted.
/// </summary>
public sealed class MoneyReceived
{
    private MoneyReceived(IReadOnlyList<MonthReceived> months, decimal perYear) => (Months, PerYear) = (months, perYear);

    public IReadOnlyList<MonthReceived> Months { get; }

    public decimal Total => Months.Sum(month => month.Received);

    public decimal SalesTaxPaid => Months.Sum(month => month.SalesTaxPaid);

    /// <summary>Income from sales, less sales tax.</summary>
    public decimal FromSales => Total - SalesTaxPaid;

    /// <summary><see cref="FromSales"/> over the months that the accounts cover, times twelve.</summary>
    public decimal PerYear { get; }

    /// <summary>Income from sales between two days.</summary>
    public static decimal Between(Sorting sorting, Period period) =>
        Entries(sorting).Where(one => period.Holds(one.Sorted.Entry.Date)).Sum(one => one.Sorted.Entry.Amount);

    public static MoneyReceived In(Sorting sorting)
    {
        var months = Entries(sorting).GroupBy(one => new DateOnly(one.Sorted.Entry.Date.Year, one.Sorted.Entry.Date.Month, 1))
            .OrderBy(month => month.Key)
            .Select(month => new MonthReceived(month.Key, month.Where(one => one.To == Placement.Sale).Sum(one => one.Sorted.Entry.Amount),
                -month.Where(one => one.To == Placement.SalesTax).Sum(one => one.Sorted.Entry.Amount)));
        var covered = sorting.Coverage.ToDictionary(account => account.Account, account => account.Months);
        var perYear = Entries(sorting).GroupBy(one => one.Sorted.Entry.Account)
            .Sum(account => account.Sum(one => one.Sorted.Entry.Amount) * 12 / covered[account.Key]);
        return new MoneyReceived([.. months], perYear);
    }

    private static IEnumerable<(Sorted Sorted, Placement To)> Entries(Sorting sorting) =>
        sorting.Of[LineOutcome.Placed].Select(sorted => (sorted, sorting.RuleOf(sorted).To))
            .Where(one => one.To is Placement.Sale or Placement.SalesTax);
}

/// <summary>The money of one month.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Received">Money for pieces as it reached the accounts, less what was paid back.</param>
/// <param name="SalesTaxPaid">Sales tax paid on, less refunds of it.</param>
public sealed record MonthReceived(DateOnly Month, decimal Received, decimal SalesTaxPaid);
