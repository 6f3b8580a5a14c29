using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>A cost profile drafted from statements, and its sources. No statement is kept.</summary>
public sealed record StatementAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The files as the service read them.</summary>
    public required IReadOnlyList<FileAnswer> Files { get; init; }

    /// <summary>Which days each account covers, with gaps and overlaps between files.</summary>
    public required IReadOnlyList<CoverageAnswer> Coverage { get; init; }

    /// <summary>The outcome of the lines, each counted once.</summary>
    public required AccountedAnswer Accounted { get; init; }

    /// <summary>Lines that could not be read, or are in another currency.</summary>
    public required RefusedAnswer Refused { get; init; }

    /// <summary>The draft: PUT it to /v1/profiles/{key} as it is, or with your changes.</summary>
    [JsonConverter(typeof(DraftText<CostProfile>))]
    public required CostProfile Draft { get; init; }

    /// <summary>The lines of the draft, and the sales and taxes beside it, with the sources of each.</summary>
    public required IReadOnlyList<DraftLineAnswer> Lines { get; init; }

    /// <summary>Large one-off purchases, drafted as equipment with a life instead of as an expense.</summary>
    public required IReadOnlyList<BoughtAnswer> Equipment { get; init; }

    /// <summary>Lines that no rule took, similar ones together, largest first; at most 200 such groups.</summary>
    public required IReadOnlyList<UnplacedAnswer> Unplaced { get; init; }

    /// <summary>Kinds of cost that no line of the draft covers: the costs people forget.</summary>
    public required IReadOnlyList<CostKind> NotCovered { get; init; }

    /// <summary>Money received for pieces, by month.</summary>
    public required MoneyReceivedAnswer MoneyReceived { get; init; }

    /// <summary>How the year is going so far; null if the files cover none of the year.</summary>
    public required PaceAnswer? Pace { get; init; }

    /// <summary>With against: the differences from the stored profile by kind of cost, largest first.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<DifferenceAnswer>? Differences { get; init; }

    /// <summary>With lines=true: every line and its outcome.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<LineAnswer>? Transactions { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required IReadOnlyDictionary<string, string> Basis { get; init; }

    /// <summary>What no bank knows, so the draft had to assume it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}

/// <summary>The money of one month.</summary>
/// <param name="Month">The month.</param>
/// <param name="Received">Money that came in from sales.</param>
/// <param name="SalesTaxPaid">Sales tax that was paid on.</param>
public sealed record MonthAnswer(string Month, decimal Received, decimal SalesTaxPaid);

/// <summary>Money for pieces as it reached the accounts.</summary>
/// <param name="Months">By month.</param>
/// <param name="Received">The total.</param>
/// <param name="SalesTaxPaid">Sales tax paid on.</param>
/// <param name="PerYear">Received less sales tax, scaled to twelve months.</param>
/// <param name="RequiredRevenue">What the drafted year must bring in, rounded up.</param>
/// <param name="Beyond">A year's money less the required revenue; negative if it falls short.</param>
/// <param name="Note">What the comparison includes.</param>
public sealed record MoneyReceivedAnswer(IReadOnlyList<MonthAnswer> Months, decimal Received, decimal SalesTaxPaid, decimal PerYear,
    decimal RequiredRevenue, decimal Beyond, string Note)
{
    private const string LikeWithLike = "Money as it reached the accounts: payouts often arrive less a marketplace's fees, "
        + "and may include sales tax and postage. The required revenue is that of the draft, " +
        "which comes from the same accounts: fees deducted before a payout are in neither figure, postage paid is in its expenses, "
            + "and sales tax paid on is deducted. It is not what buyers paid.";

    public static MoneyReceivedAnswer Of(MoneyReceived received, StudioYear drafted)
    {
        var money = drafted.Currency;
        return new MoneyReceivedAnswer(
            [.. received.Months.Select(month => new MonthAnswer(month.Month.ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture),
                CountAnswer.Exactly(month.Received, money), CountAnswer.Exactly(month.SalesTaxPaid, money)))],
            CountAnswer.Exactly(received.Total, money), CountAnswer.Exactly(received.SalesTaxPaid, money), money.Round(received.PerYear),
            money.RoundUp(drafted.RequiredRevenue), money.Round(received.PerYear - drafted.RequiredRevenue), LikeWithLike);
    }
}

/// <summary>Required revenue to date, income to date, and what is left to bring in.</summary>
/// <param name="From">First day of the year.</param>
/// <param name="To">Last day that the accounts with sales cover.</param>
/// <param name="IsWhole">False if the files lack days in between, so income may be missing too.</param>
/// <param name="Elapsed">The share of the year's days that has passed.</param>
/// <param name="ShareDue">The share of the year's takings that is due by now: by the given season, else by the days.</param>
/// <param name="KeptBack">Commissions and fees of the profile that shops deduct, so they never pass through the accounts.</param>
/// <param name="RequiredRevenue">What must reach the accounts over the year, rounded up: the required revenue of the stored profile, else of the
/// draft, less what is kept back.</param>
/// <param name="RequiredToDate">The share of it that is due by now, rounded up.</param>
/// <param name="IncomeToDate">Income from sales, less sales tax.</param>
/// <param name="Ahead">Income less requirement to date; negative if the year is behind.</param>
/// <param name="StillToBring">What the rest of the year must bring in, rounded up.</param>
/// <param name="WeeksLeft">Remaining working weeks, with the year's holidays spread evenly.</param>
/// <param name="PerWeekLeft">What each of them must bring in, rounded up; null if the year is over.</param>
public sealed record PaceAnswer(DateOnly From, DateOnly To, bool IsWhole, decimal Elapsed, decimal ShareDue, decimal KeptBack,
    decimal RequiredRevenue, decimal RequiredToDate, decimal IncomeToDate, decimal Ahead, decimal StillToBring,
    decimal WeeksLeft, decimal? PerWeekLeft)
{
    public static PaceAnswer? Of(YearToDate? pace, Currency money) => pace is null ? null : new PaceAnswer(pace.SoFar.From, pace.SoFar.To,
        pace.IsWhole, Answers.Ratio(pace.Elapsed), Answers.Ratio(pace.ShareDue), money.Round(pace.KeptBack), money.RoundUp(pace.RequiredRevenue),
        money.RoundUp(pace.RequiredToDate), CountAnswer.Exactly(pace.IncomeToDate, money), money.Round(pace.IncomeToDate - pace.RequiredToDate),
        money.RoundUp(pace.StillToBring), Answers.Hours(pace.WeeksLeft), pace.PerWeekLeft is { } week ? money.RoundUp(week) : null);
}
