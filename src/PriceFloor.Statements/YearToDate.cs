namespace PriceFloor.Statements;

/// <summary>How the year is going: required revenue to date, income to date, and what is left to bring in.</summary>
public sealed class YearToDate
{
    private readonly Pace _pace; // the progress of a plan is the same calculation

    private YearToDate(StudioYear year, decimal keptBack, Period soFar, decimal income, bool isWhole, Season? season)
    {
        var days = year.YearStart.AddYears(1).DayNumber - year.YearStart.DayNumber;
        SoFar = soFar;
        IsWhole = isWhole;
        Elapsed = (soFar.To.DayNumber - soFar.From.DayNumber + 1) / (decimal)days;
        ShareDue = season?.ShareGone(soFar.From, soFar.To) ?? Elapsed;
        KeptBack = keptBack;
        RequiredRevenue = decimal.Max(0, year.RequiredRevenue - keptBack);
        _pace = new Pace(RequiredRevenue, RequiredRevenue * ShareDue, income, RequiredRevenue, year.Profile.Calendar.WeeksPerYear * (1 - Elapsed));
    }

    /// <summary>From the year's first day to the last one that every account covers.</summary>
    public Period SoFar { get; }

    /// <summary>False if the files lack some of its days, so income may be missing too.</summary>
    public bool IsWhole { get; }

    /// <summary>The share of the year's days that has passed.</summary>
    public decimal Elapsed { get; }

    /// <summary>The share of the year's takings that is due by now: the season's, or that of the days if no season is given.</summary>
    public decimal ShareDue { get; }

    /// <summary>
    /// Commissions and fees of the year that never pass through the accounts, because shops deduct them before a payout: the money that reaches the
    /// accounts need not cover them.
    /// </summary>
    public decimal KeptBack { get; }

    /// <summary>What must reach the accounts over the year: its required revenue less what is kept back.</summary>
    public decimal RequiredRevenue { get; }

    /// <summary>The share of it that is due by now.</summary>
    public decimal RequiredToDate => _pace.Due;

    /// <summary>Income from sales in those days, less sales tax.</summary>
    public decimal IncomeToDate => _pace.Brought;

    /// <summary>What the rest of the year must bring in; 0 if it has already come in.</summary>
    public decimal StillToBring => _pace.StillToBring;

    /// <summary>Remaining working weeks, with the year's holidays spread evenly.</summary>
    public decimal WeeksLeft => _pace.WeeksLeft;

    /// <summary>What each of them must bring in; null if the year is over.</summary>
    public decimal? PerWeekLeft => _pace.PerWeekLeft;

    /// <summary>The pace of a year of which the files cover a part; null if they cover none of it.</summary>
    public static YearToDate? Of(StudioYear year, ProfileDraft draft, Season? season = null)
    {
        var sorting = draft.Sorting;
        var whole = new Period(new DateOnly(year.YearStart.Year, year.YearStart.Month, 1),
            new DateOnly(year.YearStart.Year, year.YearStart.Month, 1).AddYears(1).AddDays(-1));
        var selling = sorting.PlacedTo(Placement.Sale).Select(sorted => sorted.Entry.Account).ToHashSet();
        var accounts =
            sorting.Coverage.Where(account => account.Covered.Count > 0 && (selling.Count == 0 || selling.Contains(account.Account))).ToList();
        if (accounts.Count == 0 || new Period(whole.From, accounts.Min(account => account.Covered[^1].To)) is var known && known.To < known.From)
            return null;
        var soFar = known.Shared(whole)!.Value;
        var isWhole = accounts.TrueForAll(account => account.Covered.Any(covered => covered.From <= soFar.From && covered.To >= soFar.To));
        return new YearToDate(year, decimal.Max(0, FeesOf(year.Profile) - FeesOf(draft.Profile)), soFar,
            MoneyReceived.Between(sorting, soFar), isWhole, season);
    }

    private static decimal FeesOf(CostProfile profile) =>
        profile.Expenses.Where(line => line is { CostKind: CostKind.CommissionsAndFees, Deductible: true }).Sum(Annual.Amount);
}
