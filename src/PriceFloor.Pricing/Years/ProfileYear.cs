namespace PriceFloor.Pricing.Years;

/// <summary>Profile years: twelve months from a month; the days of the month are ignored.</summary>
internal static class ProfileYear
{
    /// <summary>1 in the profile year that holds <paramref name="day"/>, 2 in the next; zero or less before it.</summary>
    public static int Index(DateOnly day, DateOnly yearStart) => FloorDivide(Month(yearStart) - Month(day) + 11, 12) + 1;

    /// <summary>Months, counted from the year 0.</summary>
    public static int Month(DateOnly day) => day.Year * 12 + day.Month - 1;

    private static int FloorDivide(int value, int by) => value >= 0 ? value / by : -((-value + by - 1) / by);
}
