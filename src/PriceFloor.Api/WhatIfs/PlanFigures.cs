using PriceFloor.Api.Plans;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The figures of a plan in a scenario, rounded as year plans round them, and their differences.</summary>
internal static class PlanFigures
{
    public static WhatIfPlanAnswer? Of(PlanInQuestion? asked)
    {
        if (asked is null)
            return null;
        var (plan, lowest, money) = (asked.Months.Totals, asked.Months.LowestCash, asked.Months.Year.Currency);
        return new WhatIfPlanAnswer
        {
            Closes = plan.Closes,
            Contribution = money.Round(plan.Contribution),
            SurplusBeforeTax = money.RoundDown(plan.Closes ? decimal.Max(0, plan.SurplusBeforeTax) : 0),
            SurplusAfterTax = money.RoundDown(plan.Closes ? decimal.Max(0, plan.SurplusAfterTax) : 0),
            Shortfall = money.RoundUp(plan.Closes ? 0 : -plan.SurplusBeforeTax),
            LowestCash = new LowPointAnswer(lowest.Number, money.Round(lowest.Cash)),
        };
    }

    /// <summary>Figures less those of now, both as they are shown.</summary>
    public static WhatIfPlanAnswer? Less(WhatIfPlanAnswer? one, WhatIfPlanAnswer? now) => one is null || now is null ? null : new WhatIfPlanAnswer
    {
        Contribution = one.Contribution - now.Contribution,
        SurplusBeforeTax = one.SurplusBeforeTax - now.SurplusBeforeTax,
        SurplusAfterTax = one.SurplusAfterTax - now.SurplusAfterTax,
        Shortfall = one.Shortfall - now.Shortfall,
        LowestCash = new LowPointAnswer(one.LowestCash.Month - now.LowestCash.Month, one.LowestCash.Amount - now.LowestCash.Amount),
    };
}
