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
    public static decimal InYear(Equipment thing, DateOnly yearStart) => new DepreciationFormulas<Figure>(thing, yearStart, 1).Loss.Value;

    /// <summary>
    /// True if the thing is in use but nothing is left to spread over this year or a later one: a table with 0 in this year and more
    /// in the next goes on.
    /// </summary>
    public static bool LifeIsOver(Equipment thing, DateOnly yearStart) =>
        thing.InService is { } since && YearIndex(since, yearStart) is > 1 and var index && thing.Cost > thing.Salvage
        && InYear(thing, yearStart) == 0
        && !(thing.Depreciation.Method == DepreciationMethod.Percentages
            && (thing.Depreciation.Percentages ?? []).Skip(index).Any(share => share > 0));

    /// <summary>1 in the profile year that holds <paramref name="inService"/>, 2 in the next; zero or less before it.</summary>
    public static int YearIndex(DateOnly inService, DateOnly yearStart) => ProfileYear.Index(inService, yearStart);
}
