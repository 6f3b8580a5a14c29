using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The formulas of a <see cref="PlanProgress"/>.</summary>
internal sealed class PlanProgressFormulas<T> where T : IFigure<T>
{
    /// <param name="year">The plan.</param>
    /// <param name="formulas">Its formulas.</param>
    /// <param name="through">The last day that has passed.</param>
    /// <param name="sold">What was sold.</param>
    /// <param name="stock">Finished pieces that lie ready.</param>
    public PlanProgressFormulas(YearByMonth year, ByMonthFormulas<T> formulas, DateOnly through, IReadOnlyList<SoldSoFar> sold,
        IReadOnlyList<StockOfPieces> stock)
    {
        Contribution = formulas.Sold.Contribution;
        Gone = Months("monthGone", month => DaysGone(year.Months[month].From, through));
        Left = Months("monthLeft", month => 1 - Gone[month]);
        var work = year.Plan.Work is { } weights ? Season.Of(weights)! : Season.Even;
        Weeks = Months("workWeeks", month => work.Weights[month] * (T)year.Year.Profile.Calendar.WeeksPerYear / work.Sum);
        Sold = [.. sold.Select((sale, i) => new SoldSoFarFormulas<T>(sale, i + 1))];
        Pace = new PaceFormulas<T>(formulas.Year.Contribution, OfMonths(month => Contribution[month] * Gone[month]),
            Formulas.Sum(Sold.Select(sale => sale.Left)), T.Named("benchMustEarn", year.Year.BenchMustEarn),
            OfMonths(month => Weeks[month] * Left[month]));
        HoursLeft = T.Named("hoursLeft", OfMonths(month => formulas.Making.Capacity[month] * Left[month]));
        StockExpected = T.Named("stockExpected", Formulas.Sum(stock.Select(item => (item.Pieces, Line: FirstLine(year.Plan, item.Sku)))
            .Where(item => item.Line >= 0).Select(item => item.Pieces * formulas.Year.Lines[item.Line].Each.Contribution)));
        Missing = T.Named("missing", T.Max(0, Pace.StillToBring - T.Max(0, Pace.RestPlanned)));
    }

    /// <summary>What the sales of each month leave, as planned.</summary>
    public T[] Contribution { get; }

    /// <summary>The share of each month that has passed.</summary>
    public T[] Gone { get; }

    public T[] Left { get; }

    /// <summary>The calendar's weeks, spread as work is.</summary>
    public T[] Weeks { get; }

    public IReadOnlyList<SoldSoFarFormulas<T>> Sold { get; }

    public PaceFormulas<T> Pace { get; }

    public T HoursLeft { get; }

    public T StockExpected { get; }

    public bool HasHours => Rounding.Settle(HoursLeft.Value) > 0;

    /// <summary>Means something only if an hour is left.</summary>
    public T PerBenchHourLeft => T.Named("perBenchHourLeft", T.Max(0, Pace.StillToBring - StockExpected) / HoursLeft);

    /// <summary>What the rest of the plan, as it is, will not bring.</summary>
    public T Missing { get; }

    /// <summary>Means something only if something of the plan is left.</summary>
    public T SellMore => T.Named("sellMore", T.Max(1, T.RoundUp(Pace.Factor, 4)));

    /// <summary>Likewise.</summary>
    public T ToBring(int month) =>
        T.Named("toBring", month + 1, Pace.StillToBring * Contribution[month] * Left[month] / Pace.RestPlanned);

    public bool HasWeeks(int month) => Rounding.Settle((Weeks[month] * Left[month]).Value) > 0;

    /// <summary>Means something only if a week of the month is left, too.</summary>
    public T PerWeek(int month) => T.Named("perWeek", month + 1, ToBring(month) / (Weeks[month] * Left[month]));

    private static T DaysGone(DateOnly first, DateOnly through)
    {
        var (days, gone) = (DateTime.DaysInMonth(first.Year, first.Month), Season.DaysGone(first, through));
        return gone == 0 ? 0 : gone == days ? 1 : (T)gone / days;
    }

    /// <summary>The number of a design's first line, from 0; below 0 if it has none.</summary>
    private static int FirstLine(Plan plan, string sku) =>
        plan.Lines.Index().Where(line => line.Item.Sku == sku).Select(line => line.Index).DefaultIfEmpty(-1).First();

    private static T OfMonths(Func<int, T> figure) => Formulas.Sum(Enumerable.Range(0, 12).Select(figure));

    private static T[] Months(string symbol, Func<int, T> figure)
    {
        var months = new T[12];
        for (var month = 0; month < 12; month++)
            months[month] = T.Named(symbol, month + 1, figure(month));
        return months;
    }
}
