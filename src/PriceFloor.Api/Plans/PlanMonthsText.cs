using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Plans;

/// <summary>A planned year as an answer: all rounding is here.</summary>
public static class PlanMonthsText
{
    private static readonly IReadOnlyList<Func<PlanMonth, decimal>> s_flows =
    [
        month => month.Receipts, month => month.OtherIncome, month => month.Materials, month => month.Bills, month => month.Household,
        month => month.Bought, month => month.TaxPaid, month => month.SalesTaxPaid,
    ];

    /// <param name="asked">The plan with its months.</param>
    /// <param name="today">The day for which the answer is given.</param>
    /// <param name="promised">Hours that accepted quotes still take of the profile's year.</param>
    /// <param name="lines">Whether each month has the pieces of each line.</param>
    /// <param name="workings">Whether each intermediate quantity is wanted.</param>
    public static PlanMonthsAnswer Of(PlanInQuestion asked, DateOnly today, decimal promised, bool lines, bool workings)
    {
        var (year, money) = (asked.Months, asked.Months.Year.Currency);
        var totals = s_flows.Select(flow => money.Round(year.Months.Sum(flow))).ToList();
        var flows = s_flows.Select((flow, i) => money.NearestTogether([.. year.Months.Select(flow)], totals[i])).ToList();
        return new PlanMonthsAnswer
        {
            Currency = money.Code,
            Months = [.. year.Months.Select((month, i) => MonthOf(year, month, [.. flows.Select(flow => flow[i])], lines))],
            Year = FlowsOf(totals),
            Profit = money.Round(year.Profit),
            Tax = money.Round(year.Tax),
            OwedAtEnd = money.Round(year.OwedAtEnd),
            LowestCash = new LowPointAnswer(year.LowestCash.Number, money.Round(year.LowestCash.Cash)),
            LowestFree = new LowPointAnswer(year.LowestFree.Number, money.Round(year.LowestFree.Free)),
            OpeningNeeded = money.RoundUp(year.OpeningNeeded),
            BuildFrom = year.BuildFrom?.Number,
            StockAtMost = Rounding.Trim(Rounding.Up(year.StockAtMost, 4)),
            Reconciled = ReconciledOf(year, money),
            Basis = asked.Basis,
            Assumed = AssumptionAnswer.Of(asked.Sold.Assumptions.Concat(PlanWarnings.Assumed(year))),
            Warnings = WarningAnswer.Of(WarningsOf(asked, today, promised)),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(year.Year).Concat(Workings.Of(year))),
        };
    }

    /// <summary>What may make the figures wrong, or the year hard.</summary>
    public static IEnumerable<Warning> WarningsOf(PlanInQuestion asked, DateOnly today, decimal promised) =>
        asked.Sold.WarningsOn(today).Concat(Warnings.In(asked.Months.Totals)).Concat(PlanWarnings.In(asked.Months))
            .Concat(PlanWarnings.OfQuotes(asked.Months.Plan, promised)).Concat(AnotherYear(asked)).Distinct(); // lines on one channel share its own

    private static PlanMonthAnswer MonthOf(YearByMonth year, PlanMonth month, decimal[] flows, bool lines)
    {
        var (money, totals) = (year.Year.Currency, FlowsOf(flows));
        return new PlanMonthAnswer
        {
            Month = month.Number,
            From = month.From,
            NeedHours = Answers.Hours(month.NeedHours),
            Capacity = Answers.Hours(month.Capacity),
            MadeHours = Answers.Hours(month.MadeHours),
            StockHours = Answers.Hours(month.StockHours),
            Receipts = totals.Receipts,
            OtherIncome = totals.OtherIncome,
            Materials = totals.Materials,
            Bills = totals.Bills,
            Household = totals.Household,
            Bought = totals.Bought,
            TaxPaid = totals.TaxPaid,
            SalesTaxPaid = totals.SalesTaxPaid,
            TaxSetAside = money.Round(decimal.Max(0, month.Aside)),
            TaxPaidAhead = money.Round(decimal.Max(0, -month.Aside)),
            DepositsHeld = money.Round(month.DepositsHeld),
            SalesTaxHeld = money.Round(month.SalesTaxHeld),
            Cash = money.Round(month.Cash),
            Free = money.Round(month.Free),
            Lines = lines ? [.. Enumerable.Range(0, year.Plan.Lines.Count).Select(line => Answers.Hours(month.SoldOf(line)))] : null,
        };
    }

    private static PlanFlowsAnswer FlowsOf(IReadOnlyList<decimal> flows) => new()
    {
        Receipts = flows[0],
        OtherIncome = flows[1],
        Materials = flows[2],
        Bills = flows[3],
        Household = flows[4],
        Bought = flows[5],
        TaxPaid = flows[6],
        SalesTaxPaid = flows[7],
    };

    private static ReconciledAnswer ReconciledOf(YearByMonth year, Currency money)
    {
        var (change, parts) = (money.Round(year.Change), year.Parts);
        var amounts = money.NearestTogether([.. parts.Select(part => part.Amount)], change);
        return new ReconciledAnswer(change, [.. parts.Zip(amounts, (part, amount) => new CashPartAnswer(part.Kind, amount))],
            money.Round(year.Change - parts.Sum(part => part.Amount)));
    }

    /// <summary>A key that begins with a year is meant for that year.</summary>
    private static IEnumerable<Warning> AnotherYear(PlanInQuestion asked)
    {
        var (key, first) = (asked.Plan.Key, asked.Months.Months[0].From);
        if (key.Length >= 4 && key.AsSpan(0, 4).IndexOfAnyExceptInRange('0', '9') < 0 && (key.Length == 4 || !char.IsAsciiDigit(key[4]))
            && int.Parse(key.AsSpan(0, 4), System.Globalization.CultureInfo.InvariantCulture) is var year
            && year != first.Year && year != asked.Months.Months[11].From.Year)
            yield return new(WarningCodes.PlanOfAnotherYear, FormattableString.Invariant(
                $"The plan is called {key}, and the year of its profile begins in {first:yyyy-MM}."), "/profile");
    }
}
