using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.Plans;

/// <summary>The progress of a plan as an answer: all rounding is here.</summary>
public static class PlanProgressText
{
    /// <summary>Sales that were sent: what of them reached the studio, at the plan's price or the listed one if they do not say it.</summary>
    public static Outcome<List<SoldSoFar>> SoldOf(Catalogue catalogue, PlanInQuestion asked, IReadOnlyList<SoldRequest> sent)
    {
        var planned = asked.Months.Plan.Lines.Zip(asked.Sold.Sales).GroupBy(line => (line.First.Sku, line.First.Channel))
            .ToDictionary(line => line.Key, line => line.First().Second);
        var (faults, sold) = (new List<Fault>(), new List<SoldSoFar>());
        foreach (var (i, item) in sent.Index())
        {
            var place = Place.In(FormattableString.Invariant($"#/sold/{i}"));
            var sale = planned.GetValueOrDefault((catalogue.DesignNamed(item.Sku)?.Key ?? item.Sku, item.Channel)) is { } known
                ? known
                : OnSale.Of(catalogue, item.Sku, item.Channel, item.Net is null ? null : 1, place, asked.Profile);
            if (sale.Found is { } found)
                sold.Add(SoldOf(found, item));
            else
                faults.AddRange(sale.Faults);
        }

        return faults.Count > 0 ? faults : sold;
    }

    /// <param name="progress">The progress.</param>
    /// <param name="asked">The plan.</param>
    /// <param name="log">How far the log had come, if the answer rests on it.</param>
    /// <param name="warnings">What may make the figures wrong.</param>
    /// <param name="workings">Whether each intermediate quantity is wanted.</param>
    public static PlanProgressAnswer Of(PlanProgress progress, PlanInQuestion asked, string? log, IReadOnlyList<Warning> warnings, bool workings)
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
            Basis = log is null ? asked.Basis : new Dictionary<string, object>(asked.Basis) { ["log"] = log },
            Assumed = AssumptionAnswer.Of(asked.Sold.Assumptions.Concat(PlanWarnings.Assumed(year))),
            Warnings = WarningAnswer.Of(warnings),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(year.Year).Concat(Workings.Of(progress))),
        };
    }

    private static PlanWaysAnswer WaysOf(PlanWays ways, Currency money) => new(money.RoundUp(ways.Missing),
        Rounded(ways.SellMore, Rounding.Trim), Rounded(ways.Raise, Rounding.Trim), Rounded(ways.SpendLess, money.RoundUp));

    private static SoldSoFar SoldOf(CheckedPrice sale, SoldRequest item) => new(sale.Floor.Design.Key, item.Channel, item.Units,
        item.Units * (item.Net ?? sale.Check.Sale.Net), sale.Floor.Floor.UnitCost.Materials, sale.Floor.Floor.UnitCost.SecondsCredit);

    private static decimal? Rounded(decimal? figure, Func<decimal, decimal> round) => figure is { } value ? round(value) : null;
}
