using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning.ByMonth;

namespace PriceFloor.Pricing.Explaining;

/// <summary>
/// What a planned year must not keep silent about, and what it assumes. Pointers are into the plan; those of the profile begin with /profile.
/// </summary>
public static class PlanWarnings
{
    public static IEnumerable<Warning> In(YearByMonth year) =>
        [.. OfCash(year), .. OfHours(year), .. OfTax(year), .. OfTerms(year), .. OfBills(year)];

    /// <summary>Work that is promised to clients, if the plan keeps fewer hours back for it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="promised">Hours of accepted quotes that are not done.</param>
    public static IEnumerable<Warning> OfQuotes(Plan plan, decimal promised) => plan.HoursKeptBack.Reaches(promised) ? [] :
    [
        new(WarningCodes.QuotesNotKeptBack, string.Create(CultureInfo.InvariantCulture,
            $"Accepted quotes still take {Rounding.Trim(Rounding.Up(promised, 1))} hours, "
            + $"and the plan keeps {Rounding.Trim(plan.HoursKeptBack)} back."),
            "/hoursKeptBack"),
    ];

    /// <summary>Pieces that the log says were sold and of which nothing can be calculated.</summary>
    /// <param name="pieces">How many.</param>
    /// <param name="names">Designs with their channels.</param>
    public static IEnumerable<Warning> OfSalesLeftOut(int pieces, IReadOnlyList<string> names) => pieces == 0 ? [] :
    [
        new(WarningCodes.SalesLeftOut, string.Create(CultureInfo.InvariantCulture,
            $"{pieces} sold pieces of the log are not counted, since their design or channel is not stored any more or has no figures: "
            + $"{string.Join(", ", names.Take(5))}{(names.Count > 5 ? " and others" : "")}."), "/lines"),
    ];

    /// <summary>Months and proportions that the plan leaves open: each moves the low point of cash.</summary>
    public static IEnumerable<Assumption> Assumed(YearByMonth year)
    {
        foreach (var even in AssumedOf(year.Plan.Work, year.Plan.Lines.Select(line => line.Season)))
            yield return even;
        foreach (var due in AssumedDues(year))
            yield return new(due.Pointer, due.Months.Count == 1 ? (decimal)due.Months[0] : string.Join(", ", due.Months));
    }

    /// <summary>Hours and sales that are taken to be spread evenly.</summary>
    /// <param name="work">How the hours are spread; null for evenly.</param>
    /// <param name="seasons">The season of each line; null for evenly.</param>
    public static IEnumerable<Assumption> AssumedOf(IReadOnlyList<decimal>? work, IEnumerable<string?> seasons)
    {
        if (work is null)
            yield return new("/work", "even");
        foreach (var (index, season) in seasons.Index())
            if (season is null)
                yield return new(string.Create(CultureInfo.InvariantCulture, $"/lines/{index}/season"), "even");
    }

    private static IEnumerable<DueLine> AssumedDues(YearByMonth year) =>
        year.Dues.Where(due => due.IsAssumed && (due.IsBill || due.IsHousehold || due.IsIncome) && due.Line.Amount > 0);

    private static IEnumerable<Warning> OfCash(YearByMonth year)
    {
        var (lowest, money) = (year.LowestCash, year.Year.Currency);
        var (cash, at) = (money.Round(lowest.Cash), string.Create(CultureInfo.InvariantCulture, $"in month {lowest.Number} ({lowest.From:yyyy-MM})"));
        if (cash < 0)
            yield return new(WarningCodes.CashBelowZero, string.Create(CultureInfo.InvariantCulture,
                $"Cash falls to {cash} {money.Code} {at}; the year would have to begin with {money.RoundUp(year.OpeningNeeded)}."), "/opening/cash");
        if (year.Plan.Reserve > 0 && !lowest.Cash.Reaches(year.Plan.Reserve))
            yield return new(WarningCodes.BelowReserve, string.Create(CultureInfo.InvariantCulture,
                $"Cash is lowest {at}, {cash} {money.Code}, and the reserve is {money.Round(year.Plan.Reserve)}."), "/reserve");
    }

    private static IEnumerable<Warning> OfHours(YearByMonth year)
    {
        if (!year.WithinCapacity)
            yield return new(WarningCodes.OverCapacity, string.Create(CultureInfo.InvariantCulture,
                $"The plan takes {Hours(year.HoursToMake)} bench hours and the year has {Hours(year.Capacity)}; no plan of the months can help."),
                "/lines");
        if (year.NeedsStockAtStart)
            yield return new(WarningCodes.StockNeededAtStart, string.Create(CultureInfo.InvariantCulture,
                $"{Hours(year.Months[0].StockHours)} hours of work should lie ready when the year begins; "
                + $"they are counted in month 1, past its capacity."),
                "/opening/stock");
        if (year.FullFrom is { } full)
            yield return new(WarningCodes.SeasonUnlikeWork, string.Create(CultureInfo.InvariantCulture,
                $"From month {full.Number} ({full.From:yyyy-MM}) the bench has no hour to spare for three months running."), "/work");
        if (year.Plan.Work is { } work && work.Sum() != year.Year.Profile.Calendar.WeeksPerYear)
            yield return new(WarningCodes.WorkWeeksDiffer, string.Create(CultureInfo.InvariantCulture,
                $"work adds up to {Rounding.Trim(work.Sum())}, and the calendar has {Rounding.Trim(year.Year.Profile.Calendar.WeeksPerYear)} weeks; "
                + $"only proportions count."), "/work");
    }

    private static IEnumerable<Warning> OfTax(YearByMonth year)
    {
        if (Rounding.Settle(year.TaxNotCovered) > 0)
            yield return new(WarningCodes.TaxNotCovered, string.Create(CultureInfo.InvariantCulture,
                $"Of {year.Year.Currency.Round(year.Tax)} tax on the plan {year.Year.Currency.Round(year.TaxNotCovered)} is not paid in the year; "
                + $"it stays in the pot."), "/taxPaid");
    }

    private static IEnumerable<Warning> OfTerms(YearByMonth year)
    {
        var known = year.Plan.Terms.Select(terms => terms.Channel).ToHashSet();
        foreach (var (index, line) in year.Totals.Lines.Index())
            if (line.Sale.Channel is var channel && (channel.Sells == Sells.Wholesale || channel.ShopShare > 0)
                && known.Add(year.Plan.Lines[index].Channel))
                yield return new(WarningCodes.TermsUnknown,
                    $"The plan does not say when {year.Plan.Lines[index].Channel} pays, so its money is taken to come in with the sale.", "/terms");
    }

    private static IEnumerable<Warning> OfBills(YearByMonth year)
    {
        var assumed = AssumedDues(year).ToList();
        if (assumed.Count > 0)
            yield return new(WarningCodes.BillsMonthAssumed, assumed.Count == 1
                ? "Nothing says in which months a line of the profile is due; assumed lists it, and it moves the low point."
                : string.Create(CultureInfo.InvariantCulture, $"Nothing says in which months {assumed.Count} lines of the profile are due; "
                    + $"assumed lists them, and they move the low point."), "/paidIn");
    }

    private static decimal Hours(decimal hours) => Rounding.Trim(Rounding.Nearest(hours, 1));
}
