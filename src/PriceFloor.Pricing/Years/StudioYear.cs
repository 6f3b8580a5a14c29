using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>
/// What the pieces of one year must bring in, and the hours there are to make them in. Nothing here is rounded. Expenses of
/// 24,000 and living of 36,000 over 50 weeks of 5 days of 8 hours: a pool of 60,000, 240 a day, 30 an hour at the bench.
/// </summary>
public sealed class StudioYear
{
    private StudioYear(CostProfile profile, DateOnly yearStart, Tax tax)
    {
        Profile = profile;
        YearStart = yearStart;
        TaxRules = tax;
        Currency = Currency.Of(profile.Currency);

        Depreciation = profile.Equipment.Sum(thing => Years.Depreciation.InYear(thing, yearStart));
        BusinessShares = profile.Household.Sum(line => line.Amount() * line.BusinessShare);
        var deductible = profile.Expenses.Where(line => line.Deductible).ToList();
        Traced = deductible.Where(line => line.TracedTo is not null).Sum(Annual.Amount);
        Expenses = deductible.Sum(Annual.Amount) + Depreciation + BusinessShares;
        Allocated = Expenses - Traced;

        NotDeductible = profile.Expenses.Where(line => !line.Deductible).Sum(Annual.Amount);
        Household = profile.Household.Sum(line => line.Amount() * (1 - line.BusinessShare)) + NotDeductible;
        NetIncome = profile.OtherIncome.Where(line => line.Kind == IncomeKind.Net).Sum(Annual.Amount);
        TaxableIncome = profile.OtherIncome.Where(line => line.Kind == IncomeKind.Taxable).Sum(Annual.Amount);

        Workdays = WorkdaysOf(profile);
        BenchHours = BenchHoursOf(profile);
        PayAYear = profile.Pay is { } pay ? pay.Amount * PayTimesAYear(pay.Per, Workdays * profile.Calendar.HoursPerDay) : 0;
        Need = decimal.Max(0, Household - NetIncome);
        if (profile.Pay is not null)
            Need = decimal.Max(Need, PayAYear + NotDeductible);

        Profit = tax.ProfitLeaving(Need);
        TaxOnProfit = tax.On(Profit);
        RequiredRevenue = decimal.Max(0, Expenses + Profit - TaxableIncome);
        Pool = decimal.Max(0, Allocated + Profit - TaxableIncome);
        PerDay = RequiredRevenue / Workdays;
        PerWeek = RequiredRevenue * profile.Calendar.DaysPerWeek / Workdays;
        PerBenchHour = Pool / BenchHours;
        TakeHomePerHour = decimal.Max(0, Need - NotDeductible) / (Workdays * profile.Calendar.HoursPerDay);
    }

    public CostProfile Profile { get; }

    public DateOnly YearStart { get; }

    public Tax TaxRules { get; }

    public Currency Currency { get; }

    /// <summary>What equipment loses in the year.</summary>
    public decimal Depreciation { get; }

    /// <summary>Household lines' business shares a year: moved into the expenses.</summary>
    public decimal BusinessShares { get; }

    /// <summary>E_all: all annual expenses with depreciation and business shares.</summary>
    public decimal Expenses { get; }

    /// <summary>Expenses that are recovered on each design or by the channel.</summary>
    public decimal Traced { get; }

    /// <summary>E_alloc: the expenses that bench time must recover.</summary>
    public decimal Allocated { get; }

    /// <summary>Paid out of taxed money, such as a loan's principal.</summary>
    public decimal NotDeductible { get; }

    /// <summary>L: household lines net of their business share, and what is not deductible.</summary>
    public decimal Household { get; }

    /// <summary>O_n: other income that is already taxed.</summary>
    public decimal NetIncome { get; }

    /// <summary>O_t: other income that is still to be taxed.</summary>
    public decimal TaxableIncome { get; }

    /// <summary>The least pay a year; 0 where none is asked for.</summary>
    public decimal PayAYear { get; }

    /// <summary>What must be left after tax.</summary>
    public decimal Need { get; }

    /// <summary>Y*: the smallest profit before tax that leaves the need.</summary>
    public decimal Profit { get; }

    /// <summary>T(Y*).</summary>
    public decimal TaxOnProfit { get; }

    /// <summary>R: what sales must bring in over the year.</summary>
    public decimal RequiredRevenue { get; }

    /// <summary>The part of it that bench time must recover: what pieces and channels carry themselves is not in it.</summary>
    public decimal Pool { get; }

    /// <summary>D: working days, less those that other income takes.</summary>
    public decimal Workdays { get; }

    /// <summary>H: hours at the bench, helpers' included.</summary>
    public decimal BenchHours { get; }

    /// <summary>R/D: what a working day must take, so that a maker who watches the takings closes the year.</summary>
    public decimal PerDay { get; }

    /// <summary>R/(D/d): what a working week must take.</summary>
    public decimal PerWeek { get; }

    /// <summary>What an hour at the bench must recover.</summary>
    public decimal PerBenchHour { get; }

    /// <summary>What reaches the household for each working hour, bench or not: never to be confused with <see cref="PerBenchHour"/>.</summary>
    public decimal TakeHomePerHour { get; }

    /// <summary>Kinds of cost that no line touches: the costs people forget.</summary>
    public IEnumerable<CostKind> NotCovered => Enum.GetValues<CostKind>()
        .Except(Profile.Expenses.Where(line => line.CostKind is not null).Select(line => line.CostKind!.Value))
        .Except(Profile.Household.Where(line => line.BusinessShare > 0 && line.CostKind is not null).Select(line => line.CostKind!.Value))
        .Except(Profile.Equipment.Select(_ => CostKind.Depreciation));

    /// <summary>The pool where the year should also leave a surplus.</summary>
    public decimal PoolWith(Surplus? surplus) => surplus is null ? Pool : decimal.Max(0, Allocated - TaxableIncome + ProfitWith(surplus));

    /// <summary>The profit before tax that leaves the need and a wanted surplus.</summary>
    public decimal ProfitWith(Surplus? surplus) => surplus switch
    {
        null => Profit,
        { Tax: SurplusTax.After } => TaxRules.ProfitLeaving(Need + surplus.Amount),
        _ => Profit + surplus.Amount,
    };

    /// <summary>True where an expense is recovered on designs or by channels instead of by bench time.</summary>
    public bool Traces(TracedTo where) => Profile.Expenses.Any(line => line.Deductible && line.TracedTo == where);

    /// <summary>The price of a material of the stock list, or null.</summary>
    public decimal? PriceOf(string material) => Profile.Materials.FirstOrDefault(line => line.Material == material)?.Price;

    /// <summary>
    /// The year of a profile whose shape is valid. Refused: no working days (<c>no-workdays</c>), no bench time
    /// (<c>no-bench-time</c>), tax that takes everything (<c>marginal-rate</c>), figures past exactness (<c>too-large</c>).
    /// </summary>
    /// <param name="profile">The profile.</param>
    /// <param name="yearStart">Its first day where the profile does not say.</param>
    public static Outcome<StudioYear> Of(CostProfile profile, DateOnly yearStart) => Outcome<StudioYear>.Guard(() =>
    {
        var faults = CalendarFaults(profile).ToList();
        var tax = Tax.Of(profile.Tax);
        faults.AddRange(tax.Faults);
        return faults.Count > 0 ? faults : new StudioYear(profile, profile.YearStart ?? yearStart, tax.Value);
    });

    /// <summary>What stands against the calendar: no working days, or no bench time.</summary>
    public static IEnumerable<Fault> CalendarFaults(CostProfile profile)
    {
        if (WorkdaysOf(profile) <= 0)
            yield return new Fault("/otherIncome", FaultCodes.NoWorkdays,
                "Other income takes every working day of the calendar; lower its daysPerYear or add weeks or days to the calendar.");
        else if (BenchHoursOf(profile) < Limits.LeastBenchHours)
            yield return new Fault("/calendar/benchShare", FaultCodes.NoBenchTime,
                "No time is left at the bench (at least 0.01 hours a year are needed); raise benchShare or add helpers.");
    }

    private static decimal WorkdaysOf(CostProfile profile) =>
        profile.Calendar.WeeksPerYear * profile.Calendar.DaysPerWeek - profile.OtherIncome.Sum(line => line.DaysPerYear);

    private static decimal BenchHoursOf(CostProfile profile) =>
        WorkdaysOf(profile) * profile.Calendar.HoursPerDay * profile.Calendar.BenchShare + profile.Helpers.Sum(helper => helper.BenchHoursPerYear);

    private static decimal PayTimesAYear(PayPer per, decimal workingHours) => per switch
    {
        PayPer.Hour => workingHours,
        PayPer.Week => 52,
        PayPer.Month => 12,
        _ => 1,
    };
}
