using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>What equipment loses in one profile year (twelve months from a month; the days of the month are ignored).</summary>
public static class Depreciation
{
    /// <summary>
    /// The year's depreciation, unrounded. A kiln of 3,200 with 200 salvage over 8 years loses 375 in a full year, and 281.25 in
    /// a first year with 9 months of use.
    /// </summary>
    public static decimal InYear(Equipment thing, DateOnly yearStart) => thing.Depreciation.Method switch
    {
        DepreciationMethod.StraightLine => StraightLine(thing, yearStart),
        DepreciationMethod.DecliningBalance => DecliningBalance(thing, yearStart),
        _ => Percentage(thing, yearStart),
    };

    /// <summary>
    /// True where the thing is in use but nothing is left to spread over this year or a later one: a table with 0 in this year and more
    /// in the next goes on.
    /// </summary>
    public static bool LifeIsOver(Equipment thing, DateOnly yearStart) =>
        thing.InService is { } since && YearIndex(since, yearStart) is > 1 and var index && thing.Cost > thing.Salvage && InYear(thing, yearStart) == 0
        && !(thing.Depreciation.Method == DepreciationMethod.Percentages && (thing.Depreciation.Percentages ?? []).Skip(index).Any(share => share > 0));

    /// <summary>1 in the profile year that holds <paramref name="inService"/>, 2 in the next; zero or less before it.</summary>
    public static int YearIndex(DateOnly inService, DateOnly yearStart) =>
        FloorDivide(Month(yearStart) - Month(inService) + 11, 12) + 1;

    private static decimal StraightLine(Equipment thing, DateOnly yearStart)
    {
        var years = thing.Depreciation.LifeYears ?? 1;
        var aYear = (thing.Cost - thing.Salvage) / years;
        if (thing.InService is not { } since)
            return years < 1 ? thing.Cost - thing.Salvage : aYear;

        var first = Month(since);
        var last = first + (int)Rounding.Settle(years * 12);
        var months = int.Min(last, Month(yearStart) + 12) - int.Max(first, Month(yearStart));
        return (thing.Cost - thing.Salvage) * int.Max(0, months) / (years * 12);
    }

    private static decimal DecliningBalance(Equipment thing, DateOnly yearStart)
    {
        var rate = thing.Depreciation.Rate ?? 0;
        var index = thing.InService is { } since ? YearIndex(since, yearStart) : 1;
        if (index < 1)
            return 0;

        var months = thing.InService is { } month ? Month(yearStart) - 12 * (index - 1) + 12 - Month(month) : 12;
        var book = thing.Cost;
        var lost = decimal.Min(thing.Cost * rate * months / 12, book - thing.Salvage);
        for (var year = 2; year <= index && lost > 0; year++)
        {
            book -= lost;
            lost = decimal.Min(book * rate, book - thing.Salvage);
        }

        return lost;
    }

    private static decimal Percentage(Equipment thing, DateOnly yearStart)
    {
        var index = thing.InService is { } since ? YearIndex(since, yearStart) : 1;
        var table = thing.Depreciation.Percentages ?? [];
        return index >= 1 && index <= table.Count ? thing.Cost * table[index - 1] : 0;
    }

    private static int Month(DateOnly day) => day.Year * 12 + day.Month - 1;

    private static int FloorDivide(int value, int by) => value >= 0 ? value / by : -((-value + by - 1) / by);
}
