using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// Whether a year of so many pieces closes. 600 pieces that leave 56.00 each bring 33,600 toward the 30,000 that bench time must recover: it
/// closes with 3,600 to spare, if the hours are there.
/// </summary>
public sealed class YearPlan
{
    private readonly PlanFormulas<Figure> _formulas;
    private IReadOnlyList<LoadUse>? _loads;
    private IReadOnlyList<StallUse>? _stalls;
    private IReadOnlyList<int>? _ranks;

    private YearPlan(StudioYear year, IReadOnlyList<PlannedLine> lines, Surplus? surplus, decimal hoursKeptBack)
    {
        (Year, Lines, Surplus, HoursKeptBack) = (year, lines, surplus, hoursKeptBack);
        _formulas = new PlanFormulas<Figure>(year, lines, surplus, hoursKeptBack);
    }

    public StudioYear Year { get; }

    internal PlanFormulas<Figure> Formulas => _formulas;

    public IReadOnlyList<PlannedLine> Lines { get; }

    /// <summary>What the year should leave beyond the need.</summary>
    public Surplus? Surplus { get; }

    /// <summary>Bench hours for work that is not planned here.</summary>
    public decimal HoursKeptBack { get; }

    /// <summary>What bench time must recover, a wanted surplus included.</summary>
    public decimal BenchMustEarn => _formulas.Surplus.BenchMustEarn.Value;

    /// <summary>What all lines leave toward what bench time must recover.</summary>
    public decimal Contribution => _formulas.Contribution.Value;

    /// <summary>What buyers pay before sales tax and do not get back.</summary>
    public decimal Revenue => _formulas.Revenue.Value;

    /// <summary>What of it reaches the studio.</summary>
    public decimal Proceeds => _formulas.Proceeds.Value;

    /// <summary>What the plan uses of materials.</summary>
    public decimal Materials => _formulas.Materials.Value;

    public decimal BenchHours => _formulas.BenchHours.Value;

    /// <summary>Hours of selling that the lines take.</summary>
    public decimal SellingHours => _formulas.SellingHours.Value;

    /// <summary>The year's hours less those kept back; negative if more are kept back than there are.</summary>
    public decimal HoursAvailable => _formulas.HoursAvailable.Value;

    /// <summary>Every scarce thing that a step uses or that the profile limits.</summary>
    public IReadOnlyList<LoadUse> Loads => _loads ??= [.. LoadsOf(Year, Lines)];

    /// <summary>For each line its place, 1 first, in the order in which bench time should be given out; equal lines keep their order.</summary>
    public IReadOnlyList<int> Ranks => _ranks ??= RanksOf(Lines);

    public bool Closes => Contribution.Reaches(BenchMustEarn);

    /// <summary>Contribution less what bench time must recover; negative if the year falls short.</summary>
    public decimal SurplusBeforeTax => _formulas.SurplusBeforeTax.Value;

    /// <summary>Y* with a wanted surplus in it: the profit before tax that it asks for.</summary>
    public decimal ProfitAskedFor => _formulas.Surplus.Profit.Value;

    /// <summary>Y: the profit before tax that the plan brings.</summary>
    public decimal Profit => _formulas.Profit.Value;

    /// <summary>
    /// What is left once the larger profit is taxed too: Y - T(Y) less what the profit asked for leaves. Not valid if the year does not close.
    /// </summary>
    public decimal SurplusAfterTax => _formulas.SurplusAfterTax.Value;

    /// <summary>The stalls that the plan takes on each channel with one, in the order of the lines.</summary>
    public IReadOnlyList<StallUse> Stalls => _stalls ??= [.. StallLines.Of(Lines.Select(line => line.Sale.Channel)).Select((sold, i) =>
        new StallUse(sold.Stall, sold.Lines, _formulas.StallsOf(sold.Stall, sold.Lines, i + 1).Value, sold.Lines.Sum(line => Lines[line].Units)))];

    /// <summary>Whether the year's selling hours are enough; always true if the calendar has no selling share.</summary>
    public bool WithinSellingHours => Year.SellingHours == 0 || Year.SellingHours.Reaches(SellingHours);

    public bool WithinHours => HoursAvailable.Reaches(BenchHours);

    /// <summary>What the profile says is bought for pieces in the year: its lines traced to pieces.</summary>
    public decimal MaterialsBought => Year.Profile.Expenses.Where(line => line.Deductible && line.TracedTo == TracedTo.Piece).Sum(Annual.Amount);

    /// <summary>Refused with <c>too-large</c> if figures pass exactness.</summary>
    /// <param name="year">The year that the plan must close.</param>
    /// <param name="lines">Whole pieces of each.</param>
    /// <param name="surplus">What the year should leave beyond the need.</param>
    /// <param name="hoursKeptBack">Bench hours for work that is not planned here.</param>
    public static Outcome<YearPlan> Of(StudioYear year, IReadOnlyList<PlannedLine> lines, Surplus? surplus, decimal hoursKeptBack) =>
        Outcome<YearPlan>.Guard(() => new YearPlan(year, lines, surplus, hoursKeptBack));

    /// <summary>The scarce things that the profile limits, then those that only steps name.</summary>
    public static IReadOnlyList<string> ScarceThings(StudioYear year, IEnumerable<UnitCost> pieces) =>
        [.. year.Profile.Limits.Select(limit => limit.Name).Concat(pieces.SelectMany(piece => piece.ScarceThings)).Distinct()];

    private IEnumerable<LoadUse> LoadsOf(StudioYear year, IReadOnlyList<PlannedLine> lines) => ScarceThings(year, lines.Select(line => line.UnitCost))
        .Select((name, i) => new LoadUse(name, _formulas.LoadsOf(name, i + 1).All.Value,
            year.Profile.Limits.FirstOrDefault(limit => limit.Name == name)?.LoadsPerYear));

    private static int[] RanksOf(IReadOnlyList<PlannedLine> lines)
    {
        var ranks = new int[lines.Count];
        foreach (var (place, line) in lines.Index().OrderByDescending(line => Rounding.Settle(line.Item.PerBenchHour)).Index())
            ranks[line.Index] = place + 1;
        return ranks;
    }
}

/// <summary>Loads of a scarce thing that a plan takes.</summary>
/// <param name="Name">The name that steps use.</param>
/// <param name="Loads">Taken in the year; fractions are allowed.</param>
/// <param name="LoadsPerYear">What there is; null if the profile sets no limit.</param>
public sealed record LoadUse(string Name, decimal Loads, decimal? LoadsPerYear)
{
    public bool Within => LoadsPerYear is not { } most || most.Reaches(Loads);
}
