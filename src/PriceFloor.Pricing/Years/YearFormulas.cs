using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>The formulas of a <see cref="StudioYear"/>.</summary>
internal sealed class YearFormulas<T> where T : IFigure<T>
{
    public YearFormulas(CostProfile profile, DateOnly yearStart, Tax tax)
    {
        var calendar = profile.Calendar;
        Costs = new CostFormulas<T>(profile, yearStart);
        Hours = new HoursFormulas<T>(profile);
        Needs = new NeedFormulas<T>(profile, Costs, Hours.Workdays);
        Profit = tax.Leaving(Needs.Need);
        OnProfit = new TaxFormulas<T>(tax.Levies, Profit.Profit);
        ProfitAfterTax = T.Named("profitAfterTax", Profit.Profit - OnProfit.Total);

        RequiredRevenue = T.Named("requiredRevenue", T.Max(0, Costs.Expenses + Profit.Profit - Costs.TaxableIncome));
        BenchMustEarn = T.Named("benchMustEarn", T.Max(0, Costs.Allocated + Profit.Profit - Costs.TaxableIncome));
        PerDay = T.Named("perDay", RequiredRevenue / Hours.Workdays);
        PerWeek = T.Named("perWeek", RequiredRevenue * calendar.DaysPerWeek / Hours.Workdays);
        PerBenchHour = T.Named("perBenchHour", BenchMustEarn / Hours.CarryingHours);
        TakeHomePerHour = T.Named("takeHomePerHour", T.Max(0, Needs.Need - Costs.NotDeductible) / (Hours.Workdays * calendar.HoursPerDay));
    }

    public CostFormulas<T> Costs { get; }

    public HoursFormulas<T> Hours { get; }

    public NeedFormulas<T> Needs { get; }

    public ProfitFormulas<T> Profit { get; }

    public TaxFormulas<T> OnProfit { get; }

    /// <summary>The need again: what shows that the profit is right.</summary>
    public T ProfitAfterTax { get; }

    public T RequiredRevenue { get; }

    public T BenchMustEarn { get; }

    public T PerDay { get; }

    public T PerWeek { get; }

    public T PerBenchHour { get; }

    public T TakeHomePerHour { get; }
}
