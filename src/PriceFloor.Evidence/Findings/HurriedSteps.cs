namespace PriceFloor.Evidence.Findings;

/// <summary>Spreads the minutes of a whole piece over the steps that are done piece by piece and may be hurried.</summary>
internal static class HurriedSteps
{
    private const int Decimals = 2;

    /// <summary>
    /// The design whose piece takes so many minutes: those steps keep their proportions, the last takes what rounding leaves. Null where no step can
    /// change, or the others take it all.
    /// </summary>
    public static Func<Design, Design>? Taking(Design design, decimal minutes)
    {
        var steps = design.Making.Steps!;
        var last = steps.Index().LastOrDefault(step => MayChange(step.Item), (-1, null!)).Index;
        var stored = steps.Where(MayChange).Sum(step => step.HandsOnMinutes);
        var left = minutes - steps.Where(step => !MayChange(step)).Sum(step => step.HandsOnMinutes / step.BatchSize);
        if (last < 0 || left <= 0)
            return null;
        var (changed, given) = (steps.ToArray(), 0m);
        for (var i = 0; i < last; i++)
            if (MayChange(steps[i]))
                given += (changed[i] = steps[i] with { HandsOnMinutes = Rounding.Nearest(steps[i].HandsOnMinutes * left / stored, Decimals) })
                    .HandsOnMinutes;
        var rest = Rounding.Nearest(left - given, Decimals);
        if (rest < 0)
            return null;
        changed[last] = steps[last] with { HandsOnMinutes = rest };
        return one => one with { Making = one.Making with { Steps = Changed(one.Making.Steps!) } };

        IReadOnlyList<Step> Changed(IReadOnlyList<Step> steps) =>
            [.. steps.Select((step, i) => step with { HandsOnMinutes = changed[i].HandsOnMinutes })];
    }

    private static bool MayChange(Step step) => step is { MayBeHurried: true, BatchSize: 1, HandsOnMinutes: > 0 };
}
