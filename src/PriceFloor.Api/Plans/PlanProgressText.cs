using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.Plans;

/// <summary>The progress of a plan as an answer: all rounding is here.</summary>
public static class PlanProgressText
{
    /// <summary>What the sales have left for the year: (net - M + C) a piece.</summary>
    public static Outcome<BroughtSoFar> Brought(Catalogue catalogue, PlanInQuestion asked, IReadOnlyList<SoldRequest> sold)
    {
        var planned = asked.Months.Plan.Lines.Zip(asked.Sold.Sales).GroupBy(line => (line.First.Sku, line.First.Channel))
            .ToDictionary(line => line.Key, line => line.First().Second);
        var (faults, brought) = (new List<Fault>(), 0m);
        foreach (var (i, item) in sold.Index())
        {
            var place = Place.In(FormattableString.Invariant($"#/sold/{i}"));
            if (planned.GetValueOrDefault((catalogue.DesignNamed(item.Sku)?.Key ?? item.Sku, item.Channel)) is { } known)
                brought += item.Units * LeftOf(known, item.Net);
            else if (OnSale.Of(catalogue, item.Sku, item.Channel, item.Net is null ? null : 1, place, asked.Profile) is { Found: { } other })
                brought += item.Units * LeftOf(other, item.Net);
            else
                faults.AddRange(OnSale.Of(catalogue, item.Sku, item.Channel, item.Net is null ? null : 1, place, asked.Profile).Faults);
        }

        return faults.Count > 0 ? faults : new BroughtSoFar(brought);
    }

    public static PlanProgressAnswer Of(PlanProgress progress, PlanInQuestion asked, DateOnly today, decimal promised)
    {
        var (pace, money, year) = (progress.Pace, progress.Year.Year.Currency, progress.Year);
        return new PlanProgressAnswer
        {
            Currency = money.Code,
            Through = progress.Through,
            Planned = money.Round(pace.Due),
            Brought = money.Round(pace.Brought),
            Ahead = money.Round(pace.Ahead),
            Pace = pace.Ratio is { } ratio ? Answers.Hours(ratio) : null,
            Forecast = Rounded(pace.Forecast, money.Round),
            StillToBring = money.RoundUp(pace.StillToBring),
            StockExpected = money.Round(progress.StockExpected),
            RestPlanned = money.Round(pace.RestPlanned),
            Factor = Rounded(pace.Factor, factor => Rounding.Trim(Rounding.Up(factor, 4))),
            HoursLeft = Answers.Hours(progress.HoursLeft),
            WeeksLeft = Answers.Hours(pace.WeeksLeft),
            PerBenchHourLeft = Rounded(progress.PerBenchHourLeft, money.RoundUp),
            PerWeekLeft = Rounded(pace.PerWeekLeft, money.RoundUp),
            Months = [.. progress.Months.Select(month => new MonthToBringAnswer(month.Month.Number, month.Month.From,
                Rounded(month.ToBring, money.Round), Rounded(month.PerWeek, money.RoundUp)))],
            Ways = WaysOf(new PlanWays(progress), money),
            Basis = asked.Basis,
            Assumed = AssumptionAnswer.Of(asked.Sold.Assumptions.Concat(PlanWarnings.Assumed(year))),
            Warnings = WarningAnswer.Of(PlanMonthsText.WarningsOf(asked, today, promised)),
        };
    }

    private static PlanWaysAnswer WaysOf(PlanWays ways, Currency money) => new(money.RoundUp(ways.Missing),
        Rounded(ways.SellMore, Rounding.Trim), Rounded(ways.Raise, Rounding.Trim), Rounded(ways.SpendLess, money.RoundUp));

    private static decimal LeftOf(CheckedPrice sale, decimal? net) =>
        (net ?? sale.Check.Sale.Net) - sale.Floor.Floor.UnitCost.Materials + sale.Floor.Floor.UnitCost.SecondsCredit;

    private static decimal? Rounded(decimal? figure, Func<decimal, decimal> round) => figure is { } value ? round(value) : null;
}

/// <summary>What sales have left for the year.</summary>
public sealed record BroughtSoFar(decimal Amount);
