using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Pricing;

namespace PriceFloor.Api.YearPlans;

/// <summary>A plan as it goes out.</summary>
public static class PlanText
{
    private const string Hours = "hours";

    public static YearPlanAnswer Of(YearPlan plan, SaleLines sold, IReadOnlyList<ISaleLine> asked, DateOnly today, bool workings)
    {
        var money = plan.Year.Currency;
        return new YearPlanAnswer
        {
            Currency = money.Code,
            Closes = plan.Closes,
            Surplus = money.Most(plan.Closes ? decimal.Max(0, plan.Surplus) : 0),
            Shortfall = money.Least(plan.Closes ? 0 : -plan.Surplus),
            Pool = money.Least(plan.Pool),
            Contribution = money.Nearest(plan.Contribution),
            Revenue = money.Nearest(plan.Revenue),
            Proceeds = money.Nearest(plan.Proceeds),
            BenchHours = Answers.Hours(plan.BenchHours),
            WithinLimits = plan.WithinHours && plan.Loads.All(use => use.Within),
            Limits = [HoursOf(plan), .. plan.Loads.Select(LoadsOf)],
            Lines = [.. plan.Lines.Select((line, i) => LineOf(line, asked[i], plan.Ranks[i], money))],
            MaterialSpend = new MaterialSpendAnswer
            {
                Planned = money.Nearest(plan.Materials),
                Bought = money.Nearest(plan.MaterialsBought),
                Difference = money.Nearest(plan.MaterialsBought - plan.Materials),
            },
            Basis = sold.Basis,
            Assumed = AssumptionAnswer.Of(sold.Assumptions),
            Warnings = WarningAnswer.Of(sold.WarningsOn(today)),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(plan.Year).Concat(Workings.Of(plan))),
        };
    }

    private static PlanLineAnswer LineOf(PlannedLine line, ISaleLine asked, int rank, Currency money) => new()
    {
        Sku = asked.Sku,
        Channel = asked.Channel,
        Price = Rounding.WithDecimals(line.Sale.Price, money.Decimals),
        Units = Rounding.Trim(line.Units),
        Verdict = line.Check.Verdict,
        Proceeds = money.Nearest(line.Proceeds),
        Materials = money.Nearest(line.Materials),
        BenchHours = Answers.Hours(line.BenchHours),
        Contribution = money.Nearest(line.TotalContribution),
        ContributionPerBenchHour = money.Nearest(line.PerBenchHour),
        Rank = rank,
    };

    private static PlanLimitAnswer HoursOf(YearPlan plan) => new()
    {
        Name = Hours,
        Kind = LimitKind.BenchHours,
        Used = Answers.Hours(plan.BenchHours),
        Available = Answers.Hours(plan.HoursAvailable),
        Within = plan.WithinHours,
    };

    private static PlanLimitAnswer LoadsOf(LoadUse use) => new()
    {
        Name = use.Name,
        Kind = LimitKind.Loads,
        Used = Answers.Hours(use.Loads),
        Available = use.LoadsPerYear is { } most ? Rounding.Trim(most) : null,
        Within = use.Within,
    };
}
