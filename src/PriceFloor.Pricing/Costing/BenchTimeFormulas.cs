using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>The formulas of a <see cref="BenchTime"/>.</summary>
internal readonly struct BenchTimeFormulas<T> where T : IFigure<T>
{
    public BenchTimeFormulas(Making making, StudioCalendar calendar)
    {
        Entering = EnteringEachStep(making.Steps ?? []);
        Starts = T.Named("starts", Entering.Length > 0 ? Entering[0] : 1 / (T)making.GoodShare);
        var minutes = making switch
        {
            { PiecesPerDay: { } pieces } => Starts * 60 * calendar.HoursPerDay * calendar.BenchShare / pieces,
            { PiecesPerBenchDay: { } pieces } => Starts * 60 * calendar.HoursPerDay / pieces,
            { MinutesPerPiece: { } each } => Starts * each,
            _ => StepMinutes(making, Entering, _ => true),
        };
        Hours = T.Named("hoursPerGoodPiece", (minutes + Starts * making.SetupMinutes / (making.RunSize ?? 1)) / 60);
    }

    /// <summary>Pieces that enter each step for each good one.</summary>
    public T[] Entering { get; }

    public T Starts { get; }

    public T Hours { get; }

    /// <summary>Pieces at a point of the making for each good one, whose step is there.</summary>
    public T PiecesAt(string point, Making making) => point switch
    {
        "start" => Starts,
        "finish" => 1,
        _ => Entering[making.StepNamed(point)],
    };

    /// <summary>Those of the hours that must not be shortened; without a symbol.</summary>
    public T FixedHours(Making making) => StepMinutes(making, Entering, step => !step.MayBeHurried) / 60;

    /// <summary>Those of the hours in which pieces are worked over; without a symbol.</summary>
    public T ReworkHours(Making making)
    {
        var entering = Entering;
        return Formulas.Sum(making.Steps ?? [], step => step.Rework is not null,
            (step, i) => entering[i] * step.Rework!.Share * step.Rework.Minutes) / 60;
    }

    /// <summary>Loads of a scarce thing for each good piece; without a symbol.</summary>
    public T LoadsOf(string resource, Making making)
    {
        var entering = Entering;
        return Formulas.Sum(making.Steps ?? [], step => step.Uses == resource, (step, i) => entering[i] / step.BatchSize);
    }

    /// <summary>Hands-on minutes of some of the steps for each good piece.</summary>
    public static T StepMinutes(Making making, T[] entering, Func<Step, bool> counts) =>
        Formulas.Sum(making.Steps ?? [], counts, (step, i) => step.Rework is { } rework
            ? entering[i] * step.HandsOnMinutes / step.BatchSize + entering[i] * rework.Share * rework.Minutes
            : entering[i] * step.HandsOnMinutes / step.BatchSize);

    /// <summary>From the last step back, step by step: the product of many shares loses its digits.</summary>
    private static T[] EnteringEachStep(IReadOnlyList<Step> steps)
    {
        var entering = new T[steps.Count];
        for (var i = steps.Count - 1; i >= 0; i--)
            entering[i] = T.Named("entering", i + 1, (i + 1 < steps.Count ? entering[i + 1] : 1) / steps[i].GoodShare);
        return entering;
    }
}
