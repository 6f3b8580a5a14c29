using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>The working days and bench hours of a <see cref="StudioYear"/>.</summary>
internal readonly struct HoursFormulas<T> where T : IFigure<T>
{
    public HoursFormulas(CostProfile profile)
    {
        var calendar = profile.Calendar;
        var days = (T)calendar.WeeksPerYear * calendar.DaysPerWeek;
        foreach (var income in profile.OtherIncome.Where(line => line.DaysPerYear > 0))
            days -= income.DaysPerYear;
        Workdays = T.Named("workdays", days);
        var hours = Workdays * calendar.HoursPerDay * calendar.BenchShare;
        foreach (var helper in profile.Helpers)
            hours += helper.BenchHoursPerYear;
        BenchHours = T.Named("benchHoursOfTheYear", hours);
    }

    public T Workdays { get; }

    public T BenchHours { get; }
}
