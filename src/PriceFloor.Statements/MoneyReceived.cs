namespace PriceFloor.Statements;

/// <summary>
/// Money for pieces, for what it is: payouts often arrive less a marketplace's fees and may hold sales tax and postage. It is compared
/// with the draft's required revenue, which is made of the same accounts: fees that were kept back stand in neither, and sales tax is
/// taken off by what was handed on.
/// </summary>
public sealed class MoneyReceived
{
    private MoneyReceived(IReadOnlyList<MonthReceived> months, decimal perYear) => (Months, PerYear) = (months, perYear);

    public IReadOnlyList<MonthReceived> Months { get; }

    public decimal Total => Months.Sum(month => month.Received);

    public decimal SalesTaxPaid => Months.Sum(month => month.SalesTaxPaid);

    /// <summary>What sales left, sales tax taken off.</summary>
    public decimal FromSales => Total - SalesTaxPaid;

    /// <summary><see cref="FromSales"/> over the months that the accounts cover, times twelve.</summary>
    public decimal PerYear { get; }

    /// <summary>What sales left between two days.</summary>
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

/// <summary>What one month brought.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Received">Money for pieces as it reached the accounts, less what was paid back.</param>
/// <param name="SalesTaxPaid">Sales tax handed on, less what came back.</param>
public sealed record MonthReceived(DateOnly Month, decimal Received, decimal SalesTaxPaid);
