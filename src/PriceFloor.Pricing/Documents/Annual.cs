namespace PriceFloor.Pricing.Documents;

public static class Annual
{
    /// <summary>
    /// The amount over twelve full months: bills run all 52 weeks, only work stops for holidays.
    /// 540 a month = 6,480 a year; 150 a time, 8 times = 1,200 a year.
    /// </summary>
    public static decimal Amount(this IRecurring line) => line.Amount * TimesAYear(line);

    public static decimal TimesAYear(this IRecurring line) => line.Per switch
    {
        Per.Week => 52,
        Per.Fortnight => 26,
        Per.FourWeeks => 13,
        Per.Month => 12,
        Per.Quarter => 4,
        Per.Time => line.Times ?? 0,
        _ => 1,
    };
}
