using PriceFloor.Api.Documents;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The figures of the year and the plan in a scenario, rounded by name, and their differences as they are shown.</summary>
internal static class WhatIfYears
{
    private static readonly Func<WhatIfYearAnswer, decimal>[] s_figures =
    [
        year => year.RequiredRevenue, year => year.BenchMustEarn, year => year.BenchHours, year => year.PerBenchHour, year => year.TakeHomePerHour,
        year => year.Plan?.Contribution ?? 0, year => year.Plan?.SurplusBeforeTax ?? 0, year => year.Plan?.SurplusAfterTax ?? 0,
        year => year.Plan?.Shortfall ?? 0, year => year.Plan?.LowestCash.Amount ?? 0,
    ];

    public static Outcome<WhatIfYearAnswer> Of(WhatIfScenario scenario, WhatIfRemedies? wanted)
    {
        var (year, money) = (scenario.Year, scenario.Year.Currency);
        var remedies = wanted is not null && scenario.Plan is { } plan ? PlanRemedyChanges.Of(plan) : null;
        return remedies is { Found: null } ? remedies.Faults.ToList() : new WhatIfYearAnswer
        {
            RequiredRevenue = money.RoundUp(year.RequiredRevenue),
            BenchMustEarn = money.RoundUp(year.BenchMustEarn),
            BenchHours = Answers.Hours(year.BenchHours),
            PerBenchHour = money.RoundUp(year.PerBenchHour),
            TakeHomePerHour = money.Round(year.TakeHomePerHour),
            Plan = PlanFigures.Of(scenario.Plan),
            Remedies = remedies?.Value,
        };
    }

    /// <summary>Figures less those of now, both as they are shown.</summary>
    public static WhatIfYearAnswer Less(WhatIfYearAnswer one, WhatIfYearAnswer now) => new()
    {
        RequiredRevenue = one.RequiredRevenue - now.RequiredRevenue,
        BenchMustEarn = one.BenchMustEarn - now.BenchMustEarn,
        BenchHours = Rounding.Trim(one.BenchHours - now.BenchHours),
        PerBenchHour = one.PerBenchHour - now.PerBenchHour,
        TakeHomePerHour = one.TakeHomePerHour - now.TakeHomePerHour,
        Plan = PlanFigures.Less(one.Plan, now.Plan),
    };

    /// <summary>Whether the scenarios' differences add up to those of all changes together.</summary>
    public static bool AreAdditive(IReadOnlyList<WhatIfScenarioAnswer> scenarios, WhatIfScenarioAnswer combined) =>
        Array.TrueForAll(s_figures, figure => scenarios.Sum(scenario => figure(scenario.Differences)) == figure(combined.Differences));
}
