using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The formulas of a <see cref="Pace"/>.</summary>
internal sealed class PaceFormulas<T>(T planned, T due, T brought, T needed, T weeksLeft) where T : IFigure<T>
{
    public T Due { get; } = T.Named("planned", due);

    public T Brought { get; } = T.Named("brought", brought);

    public T Ahead => T.Named("ahead", Brought - Due);

    public bool HasRatio => Rounding.Settle(Due.Value) > 0;

    /// <summary>Means something only if something was due.</summary>
    public T Ratio => T.Named("pace", Brought / Due);

    public T RestPlanned => T.Named("restPlanned", planned - Due);

    /// <summary>Likewise.</summary>
    public T Forecast => T.Named("forecast", Brought + Ratio * RestPlanned);

    public T StillToBring => T.Named("stillToBring", T.Max(0, needed - Brought));

    public bool HasRest => Rounding.Settle(RestPlanned.Value) > 0;

    /// <summary>Means something only if something of the plan is left.</summary>
    public T Factor => T.Named("factor", StillToBring / RestPlanned);

    public T WeeksLeft { get; } = T.Named("weeksLeft", weeksLeft);

    public bool HasWeeks => Rounding.Settle(WeeksLeft.Value) > 0;

    /// <summary>Means something only if a week is left.</summary>
    public T PerWeekLeft => T.Named("perWeekLeft", StillToBring / WeeksLeft);
}
