using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>What a profile's lines and equipment pay and bring in each month of its year.</summary>
internal sealed class BillFormulas<T> where T : IFigure<T>
{
    public BillFormulas(StudioYear year, IReadOnlyList<DueLine> dues)
    {
        Bills = Due("bills", dues, due => due.IsBill);
        Household = Due("householdPaid", dues, due => due.IsHousehold);
        OtherIncome = Due("otherIncome", dues, due => due.IsIncome);
        var first = ProfileYear.Month(year.YearStart);
        Bought = Monthly.Sum("bought", year.Profile.Equipment,
            (thing, month) => thing.InService is { } since && ProfileYear.Month(since) == first + month, (thing, _) => (T)thing.Cost);
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

    /// <summary>A bit for each month in which a line is due, the first month's lowest.</summary>
    private static int MonthsOf(DueLine due)
    {
        var months = 0;
        for (var i = 0; i < due.Months.Count; i++)
            months |= 1 << (due.Months[i] - 1);
        return months;
    }

    private static T[] Due(string symbol, IReadOnlyList<DueLine> dues, Func<DueLine, bool> counts)
    {
        var lines = new List<(T Each, int In)>(dues.Count);
        for (var i = 0; i < dues.Count; i++)
            if (counts(dues[i]))
                lines.Add((dues[i].Months.Count == 0 ? 0 : OfYear(dues[i].Line) / dues[i].Months.Count, MonthsOf(dues[i])));
        return Monthly.Sum(symbol, lines, (line, month) => IsDue(line.In, month), (line, _) => line.Each,
            Monthly.Alike((one, other) => lines.TrueForAll(line => IsDue(line.In, one) == IsDue(line.In, other))));
    }

    private static bool IsDue(int months, int month) => (months & (1 << month)) != 0;

    private static T OfYear(IRecurring line) => (T)line.Amount * line.TimesAYear();
}
