using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Plans;

/// <summary>Whether a planned year is on its way, and what the rest of it must bring. Money in the profile's currency; it moves no floor.</summary>
public sealed record PlanProgressAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The last day that has passed.</summary>
    /// <example>2027-08-31</example>
    public required DateOnly Through { get; init; }

    /// <summary>What the plan was to leave for the year by then.</summary>
    /// <example>30018.84</example>
    public required decimal Planned { get; init; }

    /// <summary>What sales have left.</summary>
    /// <example>27617.33</example>
    public required decimal Brought { get; init; }

    /// <summary>Brought less planned; negative if the year is behind.</summary>
    /// <example>-2401.51</example>
    public required decimal Ahead { get; init; }

    /// <summary>Brought for each that was planned, four decimals; null if nothing was planned yet.</summary>
    /// <example>0.92</example>
    public required decimal? Pace { get; init; }

    /// <summary>What the year will have brought if the rest of the plan comes at the same pace; null without one.</summary>
    /// <example>55538.92</example>
    public required decimal? Forecast { get; init; }

    /// <summary>What the year must still bring, with its costs as they are now; rounded up.</summary>
    /// <example>35705.97</example>
    public required decimal StillToBring { get; init; }

    /// <summary>
    /// What finished pieces are expected to leave: their hours are spent. Those that lie ready by the log, or else those of the opening stock.
    /// </summary>
    /// <example>0.00</example>
    public required decimal StockExpected { get; init; }

    /// <summary>What the rest of the plan is to bring.</summary>
    /// <example>30349.55</example>
    public required decimal RestPlanned { get; init; }

    /// <summary>What the rest of the plan must be multiplied by, four decimals, rounded up; null if nothing of it is left.</summary>
    /// <example>1.1765</example>
    public required decimal? Factor { get; init; }

    /// <summary>Bench hours that are left, up to four decimals.</summary>
    /// <example>405.6848</example>
    public required decimal HoursLeft { get; init; }

    /// <summary>Working weeks that are left, up to four decimals.</summary>
    /// <example>16.5</example>
    public required decimal WeeksLeft { get; init; }

    /// <summary>
    /// What each bench hour that is left must bring, rounded up; null if none is left. It is no floor: charging it would price idle winter hours to
    /// Christmas customers.
    /// </summary>
    /// <example>88.02</example>
    public required decimal? PerBenchHourLeft { get; init; }

    /// <summary>What each working week that is left must bring, rounded up; null if none is left.</summary>
    /// <example>2164.00</example>
    public required decimal? PerWeekLeft { get; init; }

    /// <summary>The months of which something is left.</summary>
    public required IReadOnlyList<MonthToBringAnswer> Months { get; init; }

    /// <summary>Three ways to bring what the rest of the plan will not; each closes it alone.</summary>
    public required PlanWaysAnswer Ways { get; init; }

    /// <summary>
    /// The revisions that the answer rests on: the plan, the profile, then each line's design and channel; and how far the log had come.
    /// </summary>
    public required IReadOnlyDictionary<string, object> Basis { get; init; }

    /// <summary>Defaults that the answer rests on.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong, or the year hard.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>
    /// With workings=true: each intermediate quantity of the year, of the plan's lines, of what was sold and of what is left, in order.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>What a month, or what is left of it, must bring.</summary>
/// <param name="Month">1 to 12, of the profile's year.</param>
/// <param name="From">Its first day.</param>
/// <param name="ToBring">Its part of what is still to bring, as the plan spreads it; null if nothing of the plan is left.</param>
/// <param name="PerWeek">The same for each of its working weeks that are left; null if none is.</param>
public sealed record MonthToBringAnswer([property: WholeNumber] decimal Month, DateOnly From, decimal? ToBring, decimal? PerWeek);

/// <summary>What each way would take.</summary>
/// <param name="Missing">What the rest of the plan, as it is, will not bring; rounded up.</param>
/// <param name="SellMore">The rest of the plan times this, four decimals; 1 if it brings enough, null if nothing of it is left.</param>
/// <param name="Raise">All prices of the rest of the plan higher by this share, to the next thousandth; null if no share helps.</param>
/// <param name="SpendLess">Expenses of the year lower by this, rounded up; null if they are not as much.</param>
public sealed record PlanWaysAnswer(decimal Missing, decimal? SellMore, decimal? Raise, decimal? SpendLess);
