using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>The starts and the bench hours behind one good piece, before unsold pieces are counted. Unrounded.</summary>
public sealed class BenchTime
{
    private readonly Making _making;

    private BenchTime(Making making, StudioCalendar calendar) =>
        (_making, Formulas) = (making, new BenchTimeFormulas<Figure>(making, calendar));

    internal BenchTimeFormulas<Figure> Formulas { get; }

    /// <summary>N_1: pieces started for each good one. Of steps that keep 95 % and 98 %: 1 / 0.931 = 1.074.</summary>
    public decimal Starts => Formulas.Starts.Value;

    /// <summary>N_i: pieces that enter each step for each good one.</summary>
    public IReadOnlyList<decimal> Entering => Array.ConvertAll(Formulas.Entering, pieces => pieces.Value);

    /// <summary>Bench hours for one good piece.</summary>
    public decimal Hours => Formulas.Hours.Value;

    /// <summary>Bench hours in one start by the end of the first step that loses pieces.</summary>
    public decimal HoursUntilFirstLoss => _making.Steps is { } steps
        ? (MinutesOf([.. steps.Take(FirstLoss + 1)]) / Starts + SetupMinutes) / 60
        : Hours / Starts;

    /// <summary>Index of the first step that loses pieces.</summary>
    private int FirstLoss => (_making.Steps ?? []).TakeWhile(step => step.GoodShare == 1).Count();

    private decimal SetupMinutes => _making.SetupMinutes / (_making.RunSize ?? 1);

    public static BenchTime Of(Making making, StudioCalendar calendar) => new(making, calendar);

    /// <summary>
    /// Pieces at a point of the making for each good one: "start" (all that are started), "finish" (1) or a step's name.
    /// Null if no step has the name.
    /// </summary>
    public decimal? PiecesAt(string point) =>
        point is "start" or "finish" || _making.StepNamed(point) >= 0 ? Formulas.PiecesAt(point, _making).Value : null;

    /// <summary>Loads of a scarce thing for each good piece.</summary>
    public decimal LoadsOf(string resource) => Formulas.LoadsOf(resource, _making).Value;

    /// <summary>Whether a material used at that point is already in a piece when the first step loses any.</summary>
    public bool IsUsedBeforeFirstLoss(string point) => point == "start" || (point != "finish" && _making.StepNamed(point) <= FirstLoss);

    /// <summary>Hands-on minutes of the first steps for each good piece.</summary>
    private decimal MinutesOf(IReadOnlyList<Step> first) =>
        BenchTimeFormulas<Figure>.StepMinutes(_making with { Steps = first }, Formulas.Entering, _ => true).Value;
}
