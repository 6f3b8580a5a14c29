using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>The pieces, loads and bench minutes of a <see cref="Run"/>, step by step; making without steps is one step.</summary>
internal readonly struct RunTimeFormulas<T> where T : IFigure<T>
{
    private readonly BenchTimeFormulas<T> _time;
    private readonly bool _isSure;

    public RunTimeFormulas(Making making, StudioCalendar calendar, RunTerms terms, int startsToBeSure)
    {
        (_time, _isSure) = (new BenchTimeFormulas<T>(making, calendar), terms.Sure is not null);
        Quantity = T.Named("quantity", terms.Quantity);
        Starts = T.Named("runStarts", _isSure ? startsToBeSure : _time.Starts * Quantity);
        var steps = making.Steps ?? [new Step { HandsOnMinutes = 0 }];
        var curve = terms.Curve ?? (terms.Learning is { } learning ? new LearningCurve(learning) : null);
        LearnedFirst = curve is null ? 0 : T.Named("learnedFirst", curve.FactorOf(1));
        (Entering, Loads, Learned, StepMinutes) = (new T[steps.Count], new T[steps.Count], new T[steps.Count], new T[steps.Count]);
        T oneTrial = 0;
        for (var i = 0; i < steps.Count; i++)
        {
            var (step, byTheLoad) = (steps[i], steps[i].BatchSize > 1);
            var handsOn = making.Steps is null ? MinutesAStart(making, calendar) : step.HandsOnMinutes;
            var learns = curve is not null && !byTheLoad && step.MayBeHurried;
            Entering[i] = making.Steps is null ? Starts : T.Named("runEntering", i + 1, For(_time.Entering[i]));
            Loads[i] = byTheLoad ? T.Named("loads", i + 1, T.RoundUp(Entering[i] / step.BatchSize, 0)) : 0;
            Learned[i] = learns ? T.Named("learned", i + 1, curve!.SumTo(Entering[i].Value)) : 0;
            var handled = (byTheLoad ? Loads : learns ? Learned : Entering)[i];
            StepMinutes[i] = T.Named("stepMinutes", i + 1, WithRework(handled * handsOn, step, Entering[i]));
            if (terms.TrialPieces > 0 && !byTheLoad)
                oneTrial += WithRework(learns ? LearnedFirst * handsOn : handsOn, step, 1);
        }

        TrialMinutes = terms.TrialPieces > 0 ? T.Named("trialMinutes", terms.TrialPieces * oneTrial) : 0;
        var made = making.SetupMinutes > 0 ? terms.Runs * (T)making.SetupMinutes + Formulas.Sum(StepMinutes) : Formulas.Sum(StepMinutes);
        Minutes = T.Named("runMinutes", terms.TrialPieces > 0 ? made + TrialMinutes : made);
    }

    public T Quantity { get; }

    public T Starts { get; }

    /// <summary>Pieces that enter each step.</summary>
    public T[] Entering { get; }

    /// <summary>Whole loads of each step; 0 without a symbol for a step done piece by piece.</summary>
    public T[] Loads { get; }

    /// <summary>For how many pieces at the design's minutes the learning ones count; 0 without a symbol for a step that does not learn.</summary>
    public T[] Learned { get; }

    /// <summary>The time of the first piece over the design's; 0 without a symbol if nothing is learned.</summary>
    public T LearnedFirst { get; }

    public T[] StepMinutes { get; }

    /// <summary>0 without a symbol if there are no trial pieces.</summary>
    public T TrialMinutes { get; }

    /// <summary>All bench minutes of the run, with setup and trial pieces.</summary>
    public T Minutes { get; }

    /// <summary>Pieces at a point of the making, whose step is there; without a symbol.</summary>
    public T PiecesAt(string point, Making making) => For(_time.PiecesAt(point, making));

    /// <summary>Bench minutes of one start of making that has no steps.</summary>
    private static T MinutesAStart(Making making, StudioCalendar calendar) => making switch
    {
        { PiecesPerDay: { } pieces } => (T)60 * calendar.HoursPerDay * calendar.BenchShare / pieces,
        { PiecesPerBenchDay: { } pieces } => (T)60 * calendar.HoursPerDay / pieces,
        _ => making.MinutesPerPiece ?? 0,
    };

    private static T WithRework(T minutes, Step step, T entering) =>
        step.Rework is { } rework ? minutes + entering * rework.Share * rework.Minutes : minutes;

    private T For(T perGoodPiece) => _isSure ? perGoodPiece / _time.Starts * Starts : perGoodPiece * Quantity;
}
