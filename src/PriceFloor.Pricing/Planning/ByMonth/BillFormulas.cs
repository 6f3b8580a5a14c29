using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>What a profile's lines and equipment pay and bring in each month of its year.</summary>
internal sealed class BillFormulas<T> where T : IFigure<T>
{
    public BillFormulas(StudioYear year, IReadOnlyList<DueLine> dues)
    {
        var lines = dues.Select(due => (due, Each: due.Months.Count == 0 ? 0 : OfYear(due.Line) / due.Months.Count, In: MonthsOf(due))).ToArray();
        Bills = Due("bills", [.. lines.Where(line => line.due.IsBill)]);
        Household = Due("householdPaid", [.. lines.Where(line => line.due.IsHousehold)]);
        OtherIncome = Due("otherIncome", [.. lines.Where(line => line.due.IsIncome)]);
        var first = ProfileYear.Month(year.YearStart);
        Bought = Monthly.Of("bought", month => Formulas.Sum(year.Profile.Equipment,
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

    /// <summary>A bit for each month in which a line is due, the first month's lowest.</summary>
    private static int MonthsOf(DueLine due)
    {
        var months = 0;
        foreach (var month in due.Months)
            months |= 1 << (month - 1);
        return months;
    }

    private static T[] Due(string symbol, (DueLine Line, T Each, int In)[] lines) => Monthly.Of(symbol,
        month => Formulas.Sum(lines, line => IsDue(line.In, month), (line, _) => line.Each),
        Monthly.Alike((one, other) => Array.TrueForAll(lines, line => IsDue(line.In, one) == IsDue(line.In, other))));

    private static bool IsDue(int months, int month) => (months & (1 << month)) != 0;

    private static T OfYear(IRecurring line) => (T)line.Amount * line.TimesAYear();
}
