using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.YearPlans;

/// <summary>A plan as an answer.</summary>
public static class PlanText
{
    private const string Hours = "hours", Selling = "selling";

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
            BenchMustEarn = money.RoundUp(plan.BenchMustEarn),
            Contribution = money.Round(plan.Contribution),
            Revenue = money.Round(plan.Revenue),
            Proceeds = money.Round(plan.Proceeds),
            BenchHours = Answers.Hours(plan.BenchHours),
            SellingHours = Answers.Hours(plan.SellingHours),
            StallsNeeded = [.. plan.Stalls.Select(use => new StallsNeededAnswer
            {
                Channel = asked[use.Lines[0]].Channel,
                Stalls = use.Stalls,
                TimesAYear = use.Stall.TimesAYear is { } times ? Rounding.Trim(times) : null,
            })],
            WithinLimits = plan.WithinHours && plan.Loads.All(use => use.Within) && plan.WithinSellingHours && plan.Stalls.All(use => use.Within),
            Limits = LimitsOf(plan, asked),
            Lines = [.. plan.Lines.Select((line, i) => LineOf(line, asked[i], plan.Ranks[i], money))],
            MaterialSpend = new MaterialSpendAnswer
            {
                Planned = money.Round(plan.Materials),
                Bought = money.Round(plan.MaterialsBought),
                Difference = money.Round(plan.MaterialsBought - plan.Materials),
            },
            Basis = sold.Basis,
            Assumed = AssumptionAnswer.Of(sold.Assumptions),
            Warnings = WarningAnswer.Of(sold.WarningsOn(today).Concat(Warnings.In(plan))),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(plan.Year).Concat(Workings.Of(plan))),
        };
    }

    public static YearPlanAnswer Of(BestYear best, SaleLines sold, BestPlanRequest request, DateOnly today, bool workings)
    {
        var asked = request.Lines;
        var (plan, money) = (Of(best.Plan, sold, asked, today, workings: false), best.Plan.Year.Currency);
        return plan with
        {
            Limits =
            [
                .. plan.Limits.Concat(MonthsOf(best))
                    .Select(limit => UseOf(limit, best, asked) is { } use ? WithUse(limit, use, best.Goal, money) : limit),
            ],
            Lines = [.. plan.Lines.Zip(asked, (line, may) => line with { HeldBy = HeldBy(line.Units, may), Season = may.Season })],
            Assumed = [.. plan.Assumed, .. AssumptionAnswer.Of(AssumedOf(best, request))],
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

    /// <summary>If months matter: where nothing says when.</summary>
    private static IEnumerable<Assumption> AssumedOf(BestYear best, BestPlanRequest request) =>
        best.Resources.All(one => one.Month is null) ? [] : PlanWarnings.AssumedOf(request.Work, request.Lines.Select(line => line.Season));

    private static IEnumerable<PlanLimitAnswer> MonthsOf(BestYear best) => best.Resources.Zip(best.Mix.Uses.Skip(1))
        .Where(one => one.First.Month is not null).Select(one => new PlanLimitAnswer
        {
            Name = one.First.Resource.Name,
            Kind = LimitKind.HoursThroughMonth,
            Used = Answers.Hours(one.Second.Used),
            Available = Answers.Hours(one.Second.Available),
            Within = true,
        });

    /// <summary>What the best mix takes of a limit: the hours come first among its uses, then what else is scarce.</summary>
    private static ConstraintUsage? UseOf(PlanLimitAnswer limit, BestYear best, IReadOnlyList<ISaleLine> asked) =>
        limit.Kind == LimitKind.BenchHours
            ? best.Mix.Uses[0]
            : best.Resources.Zip(best.Mix.Uses.Skip(1)).Where(one => one.First.Kind == limit.Kind
                && (one.First.Line is { } line ? asked[line].Channel : one.First.Resource.Name) == limit.Name)
                    .Select(one => one.Second).FirstOrDefault();

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

    private static List<PlanLimitAnswer> LimitsOf(YearPlan plan, IReadOnlyList<ISaleLine> asked)
    {
        List<PlanLimitAnswer> limits = [HoursOf(plan), .. plan.Loads.Select(LoadsOf)];
        if (plan.Year.SellingHours > 0)
            limits.Add(new PlanLimitAnswer
            {
                Name = Selling,
                Kind = LimitKind.SellingHours,
                Used = Answers.Hours(plan.SellingHours),
                Available = Answers.Hours(plan.Year.SellingHours),
                Within = plan.WithinSellingHours,
            });
        limits.AddRange(plan.Stalls.Where(use => use.MostUnits is not null).Select(use => new PlanLimitAnswer
        {
            Name = asked[use.Lines[0]].Channel,
            Kind = LimitKind.StallPieces,
            Used = Rounding.Trim(use.Units),
            Available = Answers.Hours(use.MostUnits!.Value),
            Within = use.Within,
        }));
        return limits;
    }

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
