namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// How a year goes: what was due by now, what has come, and what the rest must bring. The pace of statements and the progress of a plan are this one
/// calculation. 30,000 due by now and 27,600 brought are a pace of 0.92.
/// </summary>
/// <param name="planned">What the whole year is planned to bring.</param>
/// <param name="due">The part of it that is due by now.</param>
/// <param name="brought">What has come.</param>
/// <param name="needed">What the whole year must bring.</param>
/// <param name="weeksLeft">Working weeks that are left.</param>
public sealed class Pace(decimal planned, decimal due, decimal brought, decimal needed, decimal weeksLeft)
{
    /// <summary>X: due by now.</summary>
    public decimal Due { get; } = due;

    /// <summary>A: what has come.</summary>
    public decimal Brought { get; } = brought;

    /// <summary>What has come less what was due; negative if the year is behind.</summary>
    public decimal Ahead { get; } = brought - due;

    /// <summary>What has come for each that was due; null if nothing was.</summary>
    public decimal? Ratio { get; } = due > 0 ? brought / due : null;

    /// <summary>What the rest of the plan is planned to bring.</summary>
    public decimal RestPlanned { get; } = planned - due;

    /// <summary>What the year will have brought if the rest comes at the same pace; null without one.</summary>
    public decimal? Forecast => Ratio is { } ratio ? Brought + ratio * RestPlanned : null;

    /// <summary>What must still come; 0 if it has come already.</summary>
    public decimal StillToBring { get; } = decimal.Max(0, needed - brought);

    /// <summary>What the rest of the plan must be multiplied by; null if nothing of it is left.</summary>
    public decimal? Factor => RestPlanned > 0 ? StillToBring / RestPlanned : null;

    /// <summary>Working weeks that are left.</summary>
    public decimal WeeksLeft { get; } = weeksLeft;

    /// <summary>What each of them must bring; null if none is left.</summary>
    public decimal? PerWeekLeft => Numbers.Rounding.Settle(WeeksLeft) > 0 ? StillToBring / WeeksLeft : null;
}
