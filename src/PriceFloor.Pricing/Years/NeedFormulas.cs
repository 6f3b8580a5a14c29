using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>What a <see cref="StudioYear"/> must leave after tax.</summary>
internal readonly struct NeedFormulas<T> where T : IFigure<T>
{
    public NeedFormulas(CostProfile profile, CostFormulas<T> costs, T workdays)
    {
        var forTheHousehold = T.Max(0, costs.Household - costs.NetIncome);
        PayAYear = profile.Pay is { } pay ? T.Named("payAYear", PayOf(pay, workdays, profile.Calendar)) : 0;
        Need = T.Named("need", profile.Pay is null ? forTheHousehold : T.Max(forTheHousehold, PayAYear + costs.NotDeductible));
    }

    /// <summary>0 if no least pay is asked for.</summary>
    public T PayAYear { get; }

    public T Need { get; }

    private static T PayOf(Pay pay, T workdays, StudioCalendar calendar) => pay.Per switch
    {
        PayPer.Hour => pay.Amount * workdays * calendar.HoursPerDay,
        PayPer.Week => (T)pay.Amount * 52,
        PayPer.Month => (T)pay.Amount * 12,
        _ => pay.Amount,
    };
}
