using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="TakeHome"/>.</summary>
internal readonly struct TakeHomeFormulas<T> where T : IFigure<T>
{
    public TakeHomeFormulas(decimal earnedPerBenchHour, StudioYear year)
    {
        Profit = T.Named("profitAtThisPrice", T.Named("earnedPerBenchHour", earnedPerBenchHour) * T.Named("carryingHours", year.CarryingHours)
            - T.Named("allocated", year.Allocated) + T.Named("taxableIncome", year.TaxableIncome));
        TaxedProfit = T.Named("taxedProfit", T.Max(0, Profit));
        Tax = new TaxFormulas<T>(year.TaxRules.Levies, TaxedProfit);
        PerHour = T.Named("takeHomePerHourAtThisPrice", (Profit - T.Named("atThisPriceTax", Tax.Total) - T.Named("notDeductible", year.NotDeductible))
            / (T.Named("workdays", year.Workdays) * year.Profile.Calendar.HoursPerDay));
    }

    public T Profit { get; }

    public T TaxedProfit { get; }

    public TaxFormulas<T> Tax { get; }

    public T PerHour { get; }
}
