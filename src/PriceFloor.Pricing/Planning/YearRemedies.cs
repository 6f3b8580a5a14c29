using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>The ways that change the year: lower costs, other income, longer weeks.</summary>
internal sealed class YearRemedies(RemedyCase one)
{
    private const decimal LongWeekHours = 48, HoursInADay = 24;

    private readonly IncomeFormulas<Figure> _income = new(one.Year, one.Cut);

    private decimal None => one.Money.RoundUp(0);

    private bool LeavesRoom => one.Bounds.All(bound => bound.Room.Reaches(0));

    public Remedy Spend()
    {
        const RemedyKind Kind = RemedyKind.SpendLess;
        var before = one.Money.RoundUp(one.Year.BenchMustEarn);
        if (one.IsReached)
            return one.Unchanged(Kind, before) with { Cut = None };
        if (!LeavesRoom)
            return RemedyCase.BelowMaterials(Kind, before, "no saving of costs can help");
        var cut = one.Money.RoundUp(one.Cut);
        return !one.Year.Allocated.Reaches(one.Cut)
            ? RemedyCase.Not(Kind, before, RemedyReasons.MoreThanIsSpent,
                "Even with no costs at all the household's need alone is too much for this price.")
            : RemedyCase.Possible(Kind, before, before - cut, $"a year's costs lower by {RemedyWords.Amount(cut, one.Money)}") with { Cut = cut };
    }

    public Remedy Taxable()
    {
        const RemedyKind Kind = RemedyKind.EarnTaxableElsewhere;
        if (one.IsReached)
            return one.Unchanged(Kind, None);
        if (!LeavesRoom)
            return RemedyCase.BelowMaterials(Kind, None, "no other income makes the sale worth it");
        var more = one.Money.RoundUp(_income.MoreTaxableIncome.Value);
        return RemedyCase.Possible(Kind, None, more,
            $"{RemedyWords.Amount(more, one.Money)} a year of further taxable income that takes no bench days");
    }

    public Remedy Net()
    {
        const RemedyKind Kind = RemedyKind.EarnNetElsewhere;
        var year = one.Year;
        if (one.IsReached)
            return one.Unchanged(Kind, None);
        if (!LeavesRoom)
            return RemedyCase.BelowMaterials(Kind, None, "no other income makes the sale worth it");
        if (!year.Profit.Reaches(one.Cut))
            return RemedyCase.Not(Kind, None, RemedyReasons.CostsRemain,
                "Even if the household needed nothing from the studio, its costs alone are too much for this price.");
        if (year.Profile.Pay is not null && !_income.LeftAfterTax.Value.Reaches(year.PayAYear + year.NotDeductible) && one.Cut > 0)
            return RemedyCase.Not(Kind, None, RemedyReasons.PayDecides,
                "The least pay that is asked for must be earned whatever else comes in; lower it, or choose another way.");
        var more = one.Money.RoundUp(_income.MoreNetIncome.Value);
        return RemedyCase.Possible(Kind, None, more,
            $"{RemedyWords.Amount(more, one.Money)} a year of further income that is already taxed and takes no bench days");
    }

    public Remedy Hours()
    {
        const RemedyKind Kind = RemedyKind.MoreHours;
        var calendar = one.Year.Profile.Calendar;
        var before = Rounding.Nearest(calendar.HoursPerDay * calendar.DaysPerWeek, RemedyCase.MinuteDecimals);
        if (one.IsReached)
            return one.Unchanged(Kind, before);
        if (!one.HasRoom)
            return RemedyCase.BelowMaterials(Kind, before, "no number of hours can help");
        if (one.Bounds.Max(bound => bound.WeekHours) is not { } hours)
            return RemedyCase.Not(Kind, before, RemedyReasons.NoBenchShare,
                "None of the working day is spent at the bench or selling, so a longer one carries no more of the year.");
        var week = Rounding.Up(hours, RemedyCase.MinuteDecimals);
        if (week > HoursInADay * calendar.DaysPerWeek)
            return RemedyCase.Not(Kind, before, RemedyReasons.LongerThanADay,
                $"It would take {RemedyWords.Plain(week)} hours a week, more than the working days have.");
        if (!PayAllows(week / calendar.DaysPerWeek))
            return RemedyCase.Not(Kind, before, RemedyReasons.PayDecides,
                "Each further hour must earn its own pay, so longer weeks cannot close the gap; lower the pay per hour, or choose another way.");
        return week > LongWeekHours
            ? RemedyCase.Possible(Kind, before, week,
                $"It would take {RemedyWords.Plain(week)} hours a week: more than 48 are no answer, choose another way.") with
            {
                Flag = RemedyReasons.LongWeek,
            }
            : RemedyCase.Possible(Kind, before, week,
                $"{RemedyWords.Plain(week)} working hours a week instead of {RemedyWords.Plain(before)}, with the same weeks");
    }

    /// <summary>
    /// Whether pay per hour still fits into the need on a longer working day. Pay of any other period does not grow with the hours.
    /// </summary>
    private bool PayAllows(decimal hoursPerDay) => one.Year.Profile.Pay is not { Per: PayPer.Hour } pay
        || one.Year.Need.Reaches(pay.Amount * one.Year.Workdays * hoursPerDay + one.Year.NotDeductible);
}
