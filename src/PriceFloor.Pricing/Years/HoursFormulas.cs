using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>The working days and hours of a <see cref="StudioYear"/>.</summary>
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
        var carrying = BenchHours;
        if (calendar.SellingShare > 0)
        {
            SellingHours = T.Named("sellingHoursOfTheYear", Workdays * calendar.HoursPerDay * calendar.SellingShare);
            carrying += SellingHours;
        }

        CarryingHours = T.Named("carryingHours", calendar.NormalUse == 1 ? carrying : carrying * calendar.NormalUse);
    }

    public T Workdays { get; }

    public T BenchHours { get; }

    /// <summary>Nothing if the calendar has no selling share.</summary>
    public T SellingHours { get; } = 0;

    public T CarryingHours { get; }
}
