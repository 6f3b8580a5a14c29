using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Costing;

/// <summary>The starts and the bench hours behind one good piece, before unsold pieces are counted. Unrounded.</summary>
public sealed class BenchTime
{
    private readonly Making _making;

    private BenchTime(Making making, StudioCalendar calendar)
    {
        _making = making;
        Entering = EnteringEachStep(making);
        Starts = Entering.Count > 0 ? Entering[0] : 1 / making.GoodShare;
        FirstLoss = (making.Steps ?? []).TakeWhile(step => step.GoodShare == 1).Count();
        Hours = (HandsOnMinutes(calendar) + Starts * SetupMinutes) / 60;
    }

    /// <summary>N_1: pieces started for each good one. Of steps that keep 95 % and 98 %: 1 / 0.931 = 1.074.</summary>
    public decimal Starts { get; }

    /// <summary>N_i: pieces that enter each step for each good one.</summary>
    public IReadOnlyList<decimal> Entering { get; }

    /// <summary>Bench hours for one good piece.</summary>
    public decimal Hours { get; }

    /// <summary>Those of the hours that must not be shortened: the steps that are not mayBeHurried.</summary>
    public decimal FixedHours => (_making.Steps ?? []).Zip(Entering, (step, entering) => step.MayBeHurried ? 0 : entering * step.HandsOnMinutes / step.BatchSize).Sum() / 60;

    /// <summary>Bench hours in one start by the end of the first step that loses pieces.</summary>
    public decimal HoursUntilFirstLoss => _making.Steps is { } steps
        ? (StepMinutes(steps.Take(FirstLoss + 1)) / Starts + SetupMinutes) / 60
        : Hours / Starts;

    /// <summary>Index of the first step that loses pieces.</summary>
    private int FirstLoss { get; }

    private decimal SetupMinutes => _making.SetupMinutes / (_making.RunSize ?? 1);

    public static BenchTime Of(Making making, StudioCalendar calendar) => new(making, calendar);

    /// <summary>
    /// Pieces at a point of the making for each good one: "start" (all that are started), "finish" (1) or a step's name.
    /// Null where no step bears the name.
    /// </summary>
    public decimal? PiecesAt(string point) => point switch
    {
        "start" => Starts,
        "finish" => 1,
        _ => StepNamed(point) is >= 0 and var step ? Entering[step] : null,
    };

    /// <summary>Loads of a scarce thing for each good piece.</summary>
    public decimal LoadsOf(string resource) => (_making.Steps ?? []).Zip(Entering, (step, entering) => step.Uses == resource ? entering / step.BatchSize : 0).Sum();

    /// <summary>Whether a material used at that point is already in a piece when the first step loses any.</summary>
    public bool IsUsedBeforeFirstLoss(string point) => point == "start" || (point != "finish" && StepNamed(point) <= FirstLoss);

    private int StepNamed(string name) =>
        (_making.Steps ?? []).Index().Where(step => step.Item.Name == name).Select(step => step.Index).DefaultIfEmpty(-1).First();

    private decimal HandsOnMinutes(StudioCalendar calendar) => _making switch
    {
        { PiecesPerDay: { } pieces } => Starts * 60 * calendar.HoursPerDay * calendar.BenchShare / pieces,
        { PiecesPerBenchDay: { } pieces } => Starts * 60 * calendar.HoursPerDay / pieces,
        { MinutesPerPiece: { } minutes } => Starts * minutes,
        _ => StepMinutes(_making.Steps ?? []),
    };

    private decimal StepMinutes(IEnumerable<Step> steps) =>
        steps.Zip(Entering, (step, entering) => entering * step.HandsOnMinutes / step.BatchSize).Sum();

    private static List<decimal> EnteringEachStep(Making making)
    {
        var entering = new List<decimal>();
        decimal pieces = 1;
        foreach (var step in (making.Steps ?? []).Reverse())
            entering.Add(pieces /= step.GoodShare); // step by step: the product of many shares loses its digits
        entering.Reverse();

        return entering;
    }
}
