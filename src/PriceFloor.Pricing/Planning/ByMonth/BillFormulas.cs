using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>What a profile's lines and equipment pay and bring in each month of its year.</summary>
internal sealed class BillFormulas<T> where T : IFigure<T>
{
    public BillFormulas(StudioYear year, IReadOnlyList<DueLine> dues)
    {
        Bills = Months("bills", month => Due(dues, line => line.IsBill, month));
        Household = Months("householdPaid", month => Due(dues, line => line.IsHousehold, month));
        OtherIncome = Months("otherIncome", month => Due(dues, line => line.IsIncome, month));
        var first = ProfileYear.Month(year.YearStart);
        Bought = Months("bought", month => Formulas.Sum(year.Profile.Equipment,
            thing => thing.InService is { } since && ProfileYear.Month(since) == first + month, (thing, _) => (T)thing.Cost));
        HouseholdOfYear = T.Named("householdOfTheYear", Formulas.Sum(year.Profile.Household, _ => true, (line, _) => OfYear(line)));
    }

    /// <summary>Expenses that are not recovered on pieces or by channels, and what is paid out of taxed money.</summary>
    public T[] Bills { get; }

    /// <summary>Household lines at their full amount: a business share is paid all the same.</summary>
    public T[] Household { get; }

    public T[] OtherIncome { get; }

    /// <summary>Equipment that goes into use in the month; its depreciation is no cash.</summary>
    public T[] Bought { get; }

    public T HouseholdOfYear { get; }

    private static T[] Months(string symbol, Func<int, T> figure)
    {
        var months = new T[12];
        for (var month = 0; month < 12; month++)
            months[month] = T.Named(symbol, month + 1, figure(month));
        return months;
    }

    private static T Due(IReadOnlyList<DueLine> dues, Func<DueLine, bool> counts, int month) =>
        Formulas.Sum(dues, line => counts(line) && line.Months.Contains(month + 1), (line, _) => OfYear(line.Line) / line.Months.Count);

    private static T OfYear(IRecurring line) => (T)line.Amount * line.TimesAYear();
}
