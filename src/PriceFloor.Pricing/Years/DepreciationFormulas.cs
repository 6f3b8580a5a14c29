using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>What one machine loses in a profile year.</summary>
internal readonly struct DepreciationFormulas<T> where T : IFigure<T>
{
    /// <param name="thing">The machine.</param>
    /// <param name="yearStart">The first day of the profile year.</param>
    /// <param name="number">Its number in the profile, 1 first.</param>
    public DepreciationFormulas(Equipment thing, DateOnly yearStart, int number)
    {
        Earlier = T.IsWritten ? [] : null;
        Loss = T.Named("depreciation", number, thing.Depreciation.Method switch
        {
            DepreciationMethod.StraightLine => StraightLine(thing, yearStart),
            DepreciationMethod.DecliningBalance => DecliningBalance(thing, yearStart, number, Earlier),
            _ => Percentage(thing, yearStart),
        });
    }

    /// <summary>
    /// With declining balance, for each year before this one: what the machine lost in it, and what it was worth then. Only for the workings.
    /// </summary>
    public List<(int Year, T Lost, T Book)>? Earlier { get; }

    public T Loss { get; }

    private static T StraightLine(Equipment thing, DateOnly yearStart)
    {
        var years = thing.Depreciation.LifeYears ?? 1;
        var spread = (T)thing.Cost - thing.Salvage;
        if (thing.InService is not { } since)
            return years < 1 ? spread : spread / years;

        var (first, start) = (ProfileYear.Month(since), ProfileYear.Month(yearStart));
        var months = int.Min(first + (int)Rounding.Settle(years * 12), start + 12) - int.Max(first, start);
        return spread * int.Max(0, months) / ((T)years * 12);
    }

    private static T DecliningBalance(Equipment thing, DateOnly yearStart, int number, List<(int Year, T Lost, T Book)>? earlier)
    {
        T rate = thing.Depreciation.Rate ?? 0, salvage = thing.Salvage, book = thing.Cost;
        var index = thing.InService is { } since ? ProfileYear.Index(since, yearStart) : 1;
        if (index < 1)
            return 0;

        var months = thing.InService is { } month ? ProfileYear.Month(yearStart) - 12 * (index - 1) + 12 - ProfileYear.Month(month) : 12;
        var lost = T.Min(book * rate * months / 12, book - salvage);
        for (var year = 2; year <= index && lost.Value > 0; year++)
        {
            lost = Named("lost", lost);
            book = Named("book", book - lost);
            earlier?.Add((year - 1, lost, book));
            lost = T.Min(book * rate, book - salvage);

            T Named(string what, T figure) =>
                T.IsWritten ? T.Named(string.Create(CultureInfo.InvariantCulture, $"{what}{number}Year"), year - 1, figure) : figure;
        }

        return lost;
    }

    private static T Percentage(Equipment thing, DateOnly yearStart)
    {
        var index = thing.InService is { } since ? ProfileYear.Index(since, yearStart) : 1;
        var table = thing.Depreciation.Percentages ?? [];
        return index >= 1 && index <= table.Count ? (T)thing.Cost * table[index - 1] : 0;
    }
}
