using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// The smallest change of each kind that alone closes a plan. A plan that leaves 60,368.39 of the 63,323.30 that bench time must recover closes with
/// all pieces times 1.0490, or with 2,954.91 less to spend.
/// </summary>
public sealed class PlanRemedies
{
    private const int FactorDecimals = 4;

    private readonly YearPlan _plan;
    private readonly IncomeFormulas<Figure> _income;

    private PlanRemedies(YearPlan plan)
    {
        (_plan, Missing) = (plan, -plan.SurplusBeforeTax);
        _income = new IncomeFormulas<Figure>(plan.Year, Missing);
    }

    /// <summary>What the plan leaves too little.</summary>
    private decimal Missing { get; }

    private bool LeavesNothing => Rounding.Settle(_plan.Contribution) <= 0;

    /// <summary>Each way in the order of <see cref="PlanWay"/>; none for a plan that closes. Refused with <c>too-large</c> past exactness.</summary>
    public static Outcome<IReadOnlyList<PlanRemedy>> Of(YearPlan plan) => Outcome<IReadOnlyList<PlanRemedy>>.Guard(() =>
        Outcome<IReadOnlyList<PlanRemedy>>.From(plan.Closes ? [] : [.. new PlanRemedies(plan).All()]));

    private IEnumerable<PlanRemedy> All() =>
    [
        Found(PlanWay.RaiseThePrices, CommonRise.Of([.. _plan.Lines.Select(line => (line, line.Units))], _plan.BenchMustEarn),
            RemedyReasons.NotEnough),
        SellMore(),
        SpendLess(),
        EarnTaxable(),
        EarnNet(),
        new(PlanWay.WorkFaster, null, _plan.WithinHours ? RemedyReasons.HoursNotShort : RemedyReasons.NotEnough),
    ];

    private PlanRemedy SellMore()
    {
        if (LeavesNothing)
            return new(PlanWay.SellMore, null, RemedyReasons.PriceBelowMaterials);
        var factor = Rounding.Up(_plan.BenchMustEarn / _plan.Contribution, FactorDecimals);
        return Found(PlanWay.SellMore, Allows(factor) ? factor : null, RemedyReasons.BeyondLimits);
    }

    /// <summary>Whether the hours, loads and stalls are enough for all units times a factor.</summary>
    private bool Allows(decimal factor) =>
        _plan.HoursAvailable.Reaches(_plan.BenchHours * factor)
        && (_plan.Year.SellingHours == 0 || _plan.Year.SellingHours.Reaches(_plan.SellingHours * factor))
        && _plan.Loads.All(use => use.LoadsPerYear is not { } most || most.Reaches(use.Loads * factor))
        && _plan.Stalls.All(use => use.MostUnits is not { } most || most.Reaches(use.Units * factor));

    private PlanRemedy SpendLess() => Below(PlanWay.SpendLess) ?? Found(PlanWay.SpendLess,
        _plan.Year.Allocated.Reaches(Missing) ? _plan.Year.Currency.RoundUp(Missing) : null, RemedyReasons.MoreThanIsSpent);

    private PlanRemedy EarnTaxable() => Below(PlanWay.EarnTaxableElsewhere)
        ?? new(PlanWay.EarnTaxableElsewhere, _plan.Year.Currency.RoundUp(_income.MoreTaxableIncome.Value), null);

    private PlanRemedy EarnNet()
    {
        var year = _plan.Year;
        if (Below(PlanWay.EarnNetElsewhere) is { } none)
            return none;
        if (!year.Profit.Reaches(Missing))
            return new(PlanWay.EarnNetElsewhere, null, RemedyReasons.CostsRemain);
        return year.Profile.Pay is not null && !_income.LeftAfterTax.Value.Reaches(year.PayAYear + year.NotDeductible)
            ? new(PlanWay.EarnNetElsewhere, null, RemedyReasons.PayDecides)
            : new(PlanWay.EarnNetElsewhere, year.Currency.RoundUp(_income.MoreNetIncome.Value), null);
    }

    /// <summary>Lines that together do not pay for their materials close no year, however little it needs.</summary>
    private PlanRemedy? Below(PlanWay way) =>
        Rounding.Settle(_plan.Contribution) < 0 ? new(way, null, RemedyReasons.PriceBelowMaterials) : null;

    private static PlanRemedy Found(PlanWay way, decimal? value, Code reason) => new(way, value, value is null ? reason : null);
}
