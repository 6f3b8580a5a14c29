using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>
/// What the pieces of one year must bring in, and the hours there are to make them in. Nothing here is rounded. Expenses of
/// 24,000 and living of 36,000 over 50 weeks of 5 days of 8 hours: 60,000 that bench time must recover, 240 a day, 30 an hour at the bench.
/// </summary>
public sealed class StudioYear
{
    private readonly YearFormulas<Figure> _formulas;

    private StudioYear(CostProfile profile, DateOnly yearStart, Tax tax)
    {
        Profile = profile;
        YearStart = yearStart;
        TaxRules = tax;
        Currency = Currency.Of(profile.Currency);
        _formulas = new YearFormulas<Figure>(profile, yearStart, tax);
    }

    public CostProfile Profile { get; }

    public DateOnly YearStart { get; }

    public Tax TaxRules { get; }

    public Currency Currency { get; }

    /// <summary>What equipment loses in the year.</summary>
    public decimal Depreciation => _formulas.Costs.Depreciation.Value;

    /// <summary>Household lines' business shares a year: moved into the expenses.</summary>
    public decimal BusinessShares => _formulas.Costs.BusinessShares.Value;

    /// <summary>E_all: all annual expenses with depreciation and business shares.</summary>
    public decimal Expenses => _formulas.Costs.Expenses.Value;

    /// <summary>Expenses that are recovered on each design or by the channel.</summary>
    public decimal Traced => _formulas.Costs.Traced.Value;

    /// <summary>E_alloc: the expenses that bench time must recover.</summary>
    public decimal Allocated => _formulas.Costs.Allocated.Value;

    /// <summary>Paid out of taxed money, such as a loan's principal.</summary>
    public decimal NotDeductible => _formulas.Costs.NotDeductible.Value;

    /// <summary>L: household lines net of their business share, and what is not deductible.</summary>
    public decimal Household => _formulas.Costs.Household.Value;

    /// <summary>O_n: other income that is already taxed.</summary>
    public decimal NetIncome => _formulas.Costs.NetIncome.Value;

    /// <summary>O_t: other income that is still to be taxed.</summary>
    public decimal TaxableIncome => _formulas.Costs.TaxableIncome.Value;

    /// <summary>The least pay a year; 0 if none is asked for.</summary>
    public decimal PayAYear => _formulas.Needs.PayAYear.Value;

    /// <summary>What must be left after tax.</summary>
    public decimal Need => _formulas.Needs.Need.Value;

    /// <summary>Y*: the smallest profit before tax that leaves the need.</summary>
    public decimal Profit => _formulas.Profit.Profit.Value;

    /// <summary>T(Y*).</summary>
    public decimal TaxOnProfit => _formulas.OnProfit.Total.Value;

    /// <summary>R: what sales must bring in over the year.</summary>
    public decimal RequiredRevenue => _formulas.RequiredRevenue.Value;

    /// <summary>The part of it that bench time must recover: what pieces and channels carry themselves is not in it.</summary>
    public decimal BenchMustEarn => _formulas.BenchMustEarn.Value;

    /// <summary>D: working days, less those that other income takes.</summary>
    public decimal Workdays => _formulas.Hours.Workdays.Value;

    /// <summary>H: hours at the bench, helpers' included.</summary>
    public decimal BenchHours => _formulas.Hours.BenchHours.Value;

    /// <summary>R/D: what a working day must take, so that a maker who watches the takings closes the year.</summary>
    public decimal PerDay => _formulas.PerDay.Value;

    /// <summary>R/(D/d): what a working week must take.</summary>
    public decimal PerWeek => _formulas.PerWeek.Value;

    /// <summary>D*h*s: hours of selling work that channels are charged for; 0 if the calendar has none.</summary>
    public decimal SellingHours => _formulas.Hours.SellingHours.Value;

    /// <summary>
    /// K: the hours of bench and selling work that in a normal year find work that sells, helpers' included. An hour of selling carries the year
    /// like an hour at the bench. 1,248 hours at the bench and 192 of selling, of which 85 % find work: 1,224.
    /// </summary>
    public decimal CarryingHours => _formulas.Hours.CarryingHours.Value;

    /// <summary>u: the share of these hours that in a normal year finds work that sells.</summary>
    public decimal NormalUse => Profile.Calendar.NormalUse;

    /// <summary>What a carrying hour, at the bench or selling, must recover.</summary>
    public decimal PerBenchHour => _formulas.PerBenchHour.Value;

    /// <summary>What reaches the household for each working hour, bench or not: never to be confused with <see cref="PerBenchHour"/>.</summary>
    public decimal TakeHomePerHour => _formulas.TakeHomePerHour.Value;

    /// <summary>Kinds of cost that no line touches: the costs people forget.</summary>
    public IEnumerable<CostKind> NotCovered => Enum.GetValues<CostKind>()
        .Except(Profile.Expenses.Where(line => line.CostKind is not null).Select(line => line.CostKind!.Value))
        .Except(Profile.Household.Where(line => line.BusinessShare > 0 && line.CostKind is not null).Select(line => line.CostKind!.Value))
        .Except(Profile.Equipment.Select(_ => CostKind.Depreciation));

    /// <summary>What bench time must recover if the year should also leave a surplus.</summary>
    public decimal BenchMustEarnWith(Surplus? surplus) => new SurplusFormulas<Figure>(this, surplus).BenchMustEarn.Value;

    /// <summary>The profit before tax that leaves the need and a wanted surplus.</summary>
    public decimal ProfitWith(Surplus? surplus) => new SurplusFormulas<Figure>(this, surplus).Profit.Value;

    /// <summary>True if an expense is recovered on designs or by channels instead of by bench time.</summary>
    public bool Traces(TracedTo where) => Profile.Expenses.Any(line => line.Deductible && line.TracedTo == where);

    /// <summary>The price of a material of the stock list, or null.</summary>
    public decimal? PriceOf(string material)
    {
        for (var i = 0; i < Profile.Materials.Count; i++)
            if (Profile.Materials[i].Material == material)
                return Profile.Materials[i].Price;
        return null;
    }

    /// <summary>
    /// The year of a profile whose shape is valid. Refused: no working days (<c>no-workdays</c>), no bench time
    /// (<c>no-bench-time</c>), tax that takes everything (<c>marginal-rate</c>), figures past exactness (<c>too-large</c>).
    /// </summary>
    /// <param name="profile">The profile.</param>
    /// <param name="yearStart">Its first day if the profile does not say.</param>
    /// <param name="beside">A year whose rules of tax are taken over if they are the very same.</param>
    public static Outcome<StudioYear> Of(CostProfile profile, DateOnly yearStart, StudioYear? beside = null) => Outcome<StudioYear>.Guard(() =>
    {
        var faults = CalendarFaults(profile).ToList();
        Outcome<Tax> tax = beside is not null && ReferenceEquals(beside.Profile.Tax, profile.Tax) ? beside.TaxRules : Tax.Of(profile.Tax);
        faults.AddRange(tax.Faults);
        return faults.Count > 0 ? faults : new StudioYear(profile, profile.YearStart ?? yearStart, tax.Value);
    });

    /// <summary>What is wrong with the calendar: no working days, or no bench time.</summary>
    public static IEnumerable<Fault> CalendarFaults(CostProfile profile)
    {
        var hours = new HoursFormulas<Figure>(profile);
        if (hours.Workdays.Value <= 0)
            yield return new Fault("/otherIncome", FaultCodes.NoWorkdays,
                "Other income takes every working day of the calendar; lower its daysPerYear or add weeks or days to the calendar.");
        else if (hours.BenchHours.Value < Limits.LeastBenchHours)
            yield return new Fault("/calendar/benchShare", FaultCodes.NoBenchTime,
                "No time is left at the bench (at least 0.01 hours a year are needed); raise benchShare or add helpers.");
        else if (hours.CarryingHours.Value < Limits.LeastBenchHours)
            yield return new Fault("/calendar/normalUse", FaultCodes.NoBenchTime,
                "Of the year's hours too few find work that sells (at least 0.01 are needed); raise normalUse.");
    }
}
