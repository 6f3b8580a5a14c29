using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Costing;

/// <summary>What one sold piece of a design takes from the studio, and so must bring in. Unrounded.</summary>
public sealed class UnitCost
{
    private readonly UnitCostFormulas<Figure> _formulas;
    private IReadOnlyList<string>? _scarceThings;
    private bool? _secondsPayMore;

    private UnitCost(Design design, StudioYear year, BenchTime time)
    {
        Design = design;
        Year = year;
        Time = time;
        SoldShare = design.SoldShare ?? year.Profile.SoldShare;
        _formulas = new UnitCostFormulas<Figure>(design, year, time.Formulas);
    }

    public Design Design { get; }

    public StudioYear Year { get; }

    public BenchTime Time { get; }

    /// <summary>z: of the finished pieces, the share that ever sells.</summary>
    public decimal SoldShare { get; }

    /// <summary>t: bench hours a sold piece.</summary>
    public decimal BenchHours => _formulas.BenchHours.Value;

    /// <summary>Each material line for one good piece, before unsold pieces are counted.</summary>
    public IReadOnlyList<decimal> MaterialCosts => Array.ConvertAll(_formulas.MaterialCosts, cost => cost.Value);

    /// <summary>M: materials a sold piece.</summary>
    public decimal Materials => _formulas.Materials.Value;

    /// <summary>C: what its rejected pieces bring as seconds.</summary>
    public decimal SecondsCredit => _formulas.SecondsCredit.Value;

    /// <summary>What its bench time must recover.</summary>
    public decimal BenchCost => _formulas.BenchCost.Value;

    /// <summary>F: what one sold piece must bring in, after everything that a channel takes.</summary>
    public decimal Floor => _formulas.Floor.Value;

    /// <summary>The least that bench hours and the loads of scarce things allow.</summary>
    public decimal PiecesPerYear => YearlyPieces.Pieces;

    /// <summary>How many the year can make: this floor holds only if that many are made and sold.</summary>
    public YearlyPieces YearlyPieces => field ??= new YearlyPieces(this);

    /// <summary>One-off bench hours of the design a sold piece.</summary>
    public decimal DevelopmentHours => _formulas.DevelopmentHours.Value;

    /// <summary>One-off cost of the design a sold piece: no remedy saves it.</summary>
    public decimal DevelopmentCost => _formulas.DevelopmentCost.Value;

    /// <summary>Bench hours a sold piece in which pieces are worked over.</summary>
    public decimal ReworkHours => _formulas.ReworkHours.Value;

    /// <summary>What the floor is taken of: below zero if seconds bring more than the piece takes.</summary>
    public decimal Cost => _formulas.Cost.Value;

    /// <summary>Bench hours a sold piece that must not be shortened: the steps that are not mayBeHurried, and one-off work, which is spent.</summary>
    public decimal FixedHours => _formulas.FixedHours.Value;

    /// <summary>The scarce things that its steps use, in their order.</summary>
    public IReadOnlyList<string> ScarceThings => _scarceThings ??=
        [.. (Design.Making.Steps ?? []).Where(step => step.Uses is not null).Select(step => step.Uses!).Distinct()];

    /// <summary>
    /// Loads of a scarce thing that one sold piece takes: pieces entering each step that uses it, over its batch size. A kiln step of 24
    /// whose pieces all survive and sell: 1/24.
    /// </summary>
    public decimal LoadsOf(string resource) => _formulas.LoadsOf(resource, 1).Value;

    /// <summary>True if a second brings more than a rejected start costs, so that better yield would raise the floor.</summary>
    public bool SecondsPayMoreThanTheyCost => _secondsPayMore ??=
        Time.Starts > 1 && Design.Seconds is { } sold && !SunkInAStartLostEarly.Reaches(sold.Share * sold.Price);

    /// <summary>What has gone into a start that is lost at the first step that loses any.</summary>
    private decimal SunkInAStartLostEarly => Year.PerBenchHour * Time.HoursUntilFirstLoss
        + Design.Materials.Where(line => Time.IsUsedBeforeFirstLoss(line.At))
            .Sum(line => CostOf(line, Year) * Time.PiecesAt(line.At)!.Value) / Time.Starts;

    /// <summary>
    /// The piece of a design whose shape is valid. Refused: a material that the profile lacks (<c>unknown-material</c>), a point
    /// that no step has (<c>unknown-step</c>), no bench time (<c>no-bench-time</c>), figures past exactness (<c>too-large</c>).
    /// </summary>
    public static Outcome<UnitCost> Of(Design design, StudioYear year) => Of(design, year, whole: true);

    /// <summary>
    /// The same for whoever asks thousands of times, and for nothing but the cost: how many the year can make, and whether seconds pay more than
    /// they cost, are not computed, so a figure past exactness in those is no fault.
    /// </summary>
    public static Outcome<UnitCost> OnlyCostOf(Design design, StudioYear year) => Of(design, year, whole: false);

    /// <summary>One material line for one piece at its point: 0.062 kg at 38.00 with 8 % waste is 0.062 x 38 / 0.92 = 2.5609.</summary>
    public static decimal CostOf(MaterialLine line, StudioYear year) => UnitCostFormulas<Figure>.CostOf(line, year).Value;

    private static Outcome<UnitCost> Of(Design design, StudioYear year, bool whole) => Outcome<UnitCost>.Guard(() =>
    {
        var time = BenchTime.Of(design.Making, year.Profile.Calendar);
        var faults = new List<Fault>();
        for (var i = 0; i < design.Materials.Count; i++)
            AddFaultsOf(design.Materials[i], i, time, year, faults);
        if (time.Hours <= 0)
            faults.Add(new Fault("/making", FaultCodes.NoBenchTime,
                "The piece takes no bench time, so it could carry no part of the year; give the minutes that it really takes."));
        if (faults.Count > 0)
            return faults;
        var piece = new UnitCost(design, year, time);
        if (whole)
            _ = (piece.YearlyPieces, piece.SecondsPayMoreThanTheyCost); // here, where a figure past exactness is a fault
        return piece;
    });

    private static void AddFaultsOf(MaterialLine line, int index, BenchTime time, StudioYear year, List<Fault> faults)
    {
        if (line.Material is { } material && year.PriceOf(material) is null)
            faults.Add(new Fault($"/materials/{index}/material", FaultCodes.UnknownMaterial,
                $"The profile's price list has no material \"{material}\"; add it there, or correct the name (case counts)."));
        if (time.PiecesAt(line.At) is null)
            faults.Add(new Fault($"/materials/{index}/at", FaultCodes.UnknownStep,
                $"No step is named \"{line.At}\"; use \"start\", \"finish\" or the name of one of the steps."));
    }
}
