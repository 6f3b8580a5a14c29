using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceChecks;

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
            SurplusBeforeTax = money.RoundDown(plan.Closes ? decimal.Max(0, plan.SurplusBeforeTax) : 0),
            SurplusAfterTax = money.RoundDown(plan.Closes ? decimal.Max(0, plan.SurplusAfterTax) : 0),
            Shortfall = money.RoundUp(plan.Closes ? 0 : -plan.SurplusBeforeTax),
            BenchMustEarn = money.RoundUp(plan.Pool),
            Contribution = money.Round(plan.Contribution),
            Revenue = money.Round(plan.Revenue),
            Proceeds = money.Round(plan.Proceeds),
            BenchHours = Answers.Hours(plan.BenchHours),
            WithinLimits = plan.WithinHours && plan.Loads.All(use => use.Within),
            Limits = [HoursOf(plan), .. plan.Loads.Select(LoadsOf)],
            Lines = [.. plan.Lines.Select((line, i) => LineOf(line, asked[i], plan.Ranks[i], money))],
            MaterialSpend = new MaterialSpendAnswer
            {
                Planned = money.Round(plan.Materials),
                Bought = money.Round(plan.MaterialsBought),
                Difference = money.Round(plan.MaterialsBought - plan.Materials),
            },
            Basis = sold.Basis,
            Assumed = AssumptionAnswer.Of(sold.Assumptions),
            Warnings = WarningAnswer.Of(sold.WarningsOn(today)),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(plan.Year).Concat(Workings.Of(plan))),
        };
    }

    public static YearPlanAnswer Of(BestYear best, SaleLines sold, IReadOnlyList<BestLineRequest> asked, DateOnly today, bool workings)
    {
        var (plan, money) = (Of(best.Plan, sold, asked, today, workings: false), best.Plan.Year.Currency);
        return plan with
        {
            // The hours come first among the uses, whatever a scarce thing is called.
            Limits = [.. plan.Limits.Select((limit, i) => i == 0 ? WithUse(limit, best.Mix.Uses[0], best.Goal, money) : LoadUse(limit, best, money))],
            Lines = [.. plan.Lines.Zip(asked, (line, may) => line with { HeldBy = HeldBy(line.Units, may) })],
            Best = new BestAnswer
            {
                Goal = best.Goal,
                Proven = best.Mix.Proven,
                Bound = best.Bound is { } bound
                    ? best.Goal == MixGoal.MaximumSurplus ? money.RoundUp(bound) : Rounding.Trim(Rounding.Down(bound, 4))
                    : null,
            },
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(best.Plan.Year).Concat(Workings.Of(best))),
        };
    }

    private static PlanLimitAnswer LoadUse(PlanLimitAnswer limit, BestYear best, Currency money) =>
        best.Mix.Uses.Skip(1).FirstOrDefault(use => use.Name == limit.Name) is { } use ? WithUse(limit, use, best.Goal, money) : limit;

    private static PlanLimitAnswer WithUse(PlanLimitAnswer limit, ConstraintUsage use, MixGoal goal, Currency money) => limit with
    {
        Binds = use.Binds,
        WorthOfOneMore = use.WorthOfOneMore is { } worth ? goal == MixGoal.MaximumSurplus ? money.Round(worth) : Answers.Hours(worth) : null,
    };

    private static LineBound? HeldBy(decimal units, BestLineRequest may) =>
        units == may.Maximum ? LineBound.Maximum : units == may.Minimum && units > 0 ? LineBound.Minimum : null;

    private static PlanLineAnswer LineOf(PlannedLine line, ISaleLine asked, int rank, Currency money) => new()
    {
        Sku = asked.Sku,
        Channel = asked.Channel,
        Price = Rounding.WithDecimals(line.Sale.Price, money.Decimals),
        Units = Rounding.Trim(line.Units),
        Verdict = line.Check.Verdict,
        Proceeds = money.Round(line.Proceeds),
        Materials = money.Round(line.Materials),
        BenchHours = Answers.Hours(line.BenchHours),
        Contribution = money.Round(line.TotalContribution),
        ContributionPerBenchHour = money.Round(line.PerBenchHour),
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
