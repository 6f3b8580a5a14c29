using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// How a year goes: what was due by now, what has come, and what the rest must bring. The pace of statements and the progress of a plan are this one
/// calculation. 30,000 due by now and 27,600 brought are a pace of 0.92.
/// </summary>
public sealed class Pace
{
    private readonly PaceFormulas<Figure> _formulas;

    /// <param name="planned">What the whole year is planned to bring.</param>
    /// <param name="due">The part of it that is due by now.</param>
    /// <param name="brought">What has come.</param>
    /// <param name="needed">What the whole year must bring.</param>
    /// <param name="weeksLeft">Working weeks that are left.</param>
    public Pace(decimal planned, decimal due, decimal brought, decimal needed, decimal weeksLeft)
        : this(new PaceFormulas<Figure>(planned, due, brought, needed, weeksLeft))
    {
    }

    internal Pace(PaceFormulas<Figure> formulas) => _formulas = formulas;

    /// <summary>X: due by now.</summary>
    public decimal Due => _formulas.Due.Value;

    /// <summary>A: what has come.</summary>
    public decimal Brought => _formulas.Brought.Value;

    /// <summary>What has come less what was due; negative if the year is behind.</summary>
    public decimal Ahead => _formulas.Ahead.Value;

    /// <summary>What has come for each that was due; null if nothing was.</summary>
    public decimal? Ratio => _formulas.HasRatio ? _formulas.Ratio.Value : null;

    /// <summary>What the rest of the plan is planned to bring.</summary>
    public decimal RestPlanned => _formulas.RestPlanned.Value;

    /// <summary>What the year will have brought if the rest comes at the same pace; null without one.</summary>
    public decimal? Forecast => _formulas.HasRatio ? _formulas.Forecast.Value : null;

    /// <summary>What must still come; 0 if it has come already.</summary>
    public decimal StillToBring => _formulas.StillToBring.Value;

    /// <summary>What the rest of the plan must be multiplied by; null if nothing of it is left.</summary>
    public decimal? Factor => _formulas.HasRest ? _formulas.Factor.Value : null;

    /// <summary>Working weeks that are left.</summary>
    public decimal WeeksLeft => _formulas.WeeksLeft.Value;

    /// <summary>What each of them must bring; null if none is left.</summary>
    public decimal? PerWeekLeft => _formulas.HasWeeks ? _formulas.PerWeekLeft.Value : null;
}
