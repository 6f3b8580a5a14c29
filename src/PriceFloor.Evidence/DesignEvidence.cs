using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence;

/// <summary>What the lines of one design say of it. Money is unrounded.</summary>
public sealed class DesignEvidence
{
    private readonly IReadOnlyList<Found<Design>> _found;

    private DesignEvidence(KnownDesign known, LogOfDesign log, EvidenceChoices choices, GoodPriors good)
    {
        (Known, Log) = (known, log);
        Bench = BenchFindings.Of(known.Stored.Design, known.Stored.Year.Profile.Calendar, log.Bench, (choices.Level, good));
        Shelf = ShelfHistory.Of(log.Movements, choices.To);
        SoldShare = SoldFinding.Of(ShelfTimes.Of([Shelf]), choices.Level);
        _found =
        [
            .. Bench.Found,
            .. SoldShare is { } sold ? [sold.As<Design>(known.Stored.SoldShare, (design, share) => design with { SoldShare = share })]
                : Array.Empty<Found<Design>>(),
            .. SecondsFindings.Of(known.Stored.Design.Seconds, log.Sold, log.Rejected, known.Stored.Year.Currency, choices.Level),
        ];
        Draft = Found<Design>.Draft(known.Stored.Design, _found);
        AsFound = UnitCost.Of(Draft, known.Stored.Year);
        Sales = choices.Channel is { } channel ? [.. log.Sold.Where(line => line.Order.Channel == channel)] : log.Sold;
        Take = Take.Of(Sales);
    }

    public KnownDesign Known { get; }

    /// <summary>Its lines; without movements and sales once they are let go.</summary>
    public LogOfDesign Log { get; private set; }

    public ShelfHistory Shelf { get; }

    /// <summary>The sold lines that the take is of.</summary>
    public IReadOnlyList<SoldLine> Sales { get; private set; }

    internal BenchFindings Bench { get; }

    internal SoldFinding? SoldShare { get; }

    public IEnumerable<Finding> Findings => _found.Select(found => found.Finding);

    /// <summary>The design with all that was found.</summary>
    public Design Draft { get; }

    /// <summary>The draft's numbers that were found, each with its range.</summary>
    public IEnumerable<DoubtedNumber> Doubts => _found.SelectMany(found => DoubtedNumber.Of(found, Known.Stored.Design));

    /// <summary>The piece of the draft, or why there is none.</summary>
    public Outcome<UnitCost> AsFound { get; }

    public Take? Take { get; }

    /// <summary>The entries that the learning is of; null if nothing was timed.</summary>
    public TimedWork? Timed => Bench.Timed;

    public LearningFit? Learning => Bench.Learning;

    public LearningFit.Absence NoLearning => Bench.NoLearning;

    /// <summary>The first age by which half of the pieces are sold; null if never.</summary>
    public int? DaysToSell => SoldShare?.Curve.DaysToSell();

    /// <summary>Of the pieces made, the share sold, unrounded; null where none is known to be made.</summary>
    public decimal? SellThrough => Shelf is { Made: > 0, Unmatched: 0 } ? (decimal)Shelf.Sold / Shelf.Made : null;

    /// <summary>For how many weeks the pieces on hand last, unrounded; null where none was sold or the stock is not known.</summary>
    public decimal? CoverWeeks => Shelf is { Made: > 0, Unmatched: 0, Sold: > 0, DaysInStock: > 0 }
        ? Shelf.OnHand * (decimal)Shelf.DaysInStock / 7 / Shelf.Sold : null;

    /// <summary>The floor with one finding alone; null where nothing is drafted from it, or it has no floor.</summary>
    /// <param name="index">The finding's index.</param>
    public decimal? FloorWith(int index) => _found[index] is { Finding.Says: not Says.TooFew, Change: { } change }
        ? UnitCost.Of(change(Known.Stored.Design), Known.Stored.Year).Found?.Floor : null;

    /// <summary>
    /// The piece of the draft if it took other minutes, which stand where the draft has those of its curve; null if it has no floor.
    /// </summary>
    /// <param name="minutes">Minutes of the whole piece, or of the step that the curve speaks about.</param>
    public UnitCost? Taking(decimal minutes)
    {
        var making = Draft.Making;
        var curve = _found.FirstOrDefault(found => found.Finding.Method is not null);
        var change = curve?.Finding.Pointer switch
        {
            "/making/minutesPerPiece" => design => design with { Making = making with { MinutesPerPiece = minutes } },
            "/making/steps" => HurriedSteps.Taking(Draft, minutes),
            _ => null,
        };
        return change is null ? null : UnitCost.Of(change(Draft), Known.Stored.Year).Found;
    }

    /// <summary>The lower and the upper minutes of the whole piece's finding; null where there is none.</summary>
    public (decimal Low, decimal High)? Minutes =>
        Findings.FirstOrDefault(found => found.Pointer is "/making/minutesPerPiece" or "/making/steps" && found.Says != Says.TooFew)
            is { Estimate: { Low: { } low, High: { } high } } ? (low, high) : null;

    /// <summary>Whether the minutes of a piece, or of some of its steps, were found with their ends.</summary>
    public bool HasMinutesRange => Minutes is not null || StepMinutes.Count > 0;

    /// <summary>
    /// What an hour earned by the upper and by the lower minutes of a piece, unrounded: one figure where they have no ends. Minutes found by step are
    /// all at their upper, or all at their lower ends. Null where nothing stayed sold, or the draft has no floor.
    /// </summary>
    public (decimal Low, decimal High)? EarnedRange
    {
        get
        {
            if (this is not { Take: { } take, AsFound.Found: { } piece } || take.Earned(piece) is not { } earned)
                return null;
            var (slow, quick) = Minutes is { } minutes ? (Whole(minutes.High), Whole(minutes.Low))
                : (BySteps(step => step.High), BySteps(step => step.Low));
            return slow is not null && quick is not null ? (take.Earned(slow) ?? earned, take.Earned(quick) ?? earned) : (earned, earned);
        }
    }

    /// <summary>The steps whose minutes were found with their ends.</summary>
    private IReadOnlyList<(int Step, decimal Low, decimal High)> StepMinutes =>
    [
        .. (Draft.Making.Steps ?? []).SelectMany((_, index) => Findings.Where(found => found.Says != Says.TooFew
                && found.Pointer == FormattableString.Invariant($"/making/steps/{index}/handsOnMinutes"))
            .Where(found => found.Estimate is { Low: not null, High: not null })
            .Select(found => (index, found.Estimate.Low!.Value, found.Estimate.High!.Value))),
    ];

    /// <summary>The piece of the draft if each of those steps took other minutes; null if there are none.</summary>
    private UnitCost? BySteps(Func<(int Step, decimal Low, decimal High), decimal> end)
    {
        var found = StepMinutes;
        if (found.Count == 0)
            return null;
        var steps = Draft.Making.Steps!.ToArray();
        foreach (var step in found)
            steps[step.Step] = steps[step.Step] with { HandsOnMinutes = end(step) };
        return UnitCost.Of(Draft with { Making = Draft.Making with { Steps = steps } }, Known.Stored.Year).Found;
    }

    /// <summary>The piece of the draft if a whole one took other minutes.</summary>
    private UnitCost? Whole(decimal minutes)
    {
        var change = Draft.Making.Steps is null
            ? design => design with { Making = design.Making with { MinutesPerPiece = minutes } } : HurriedSteps.Taking(Draft, minutes);
        return change is null ? null : UnitCost.Of(change(Draft), Known.Stored.Year).Found;
    }

    /// <summary>Lets go of movements and sales, so that what was found can be kept without them. Findings, take and stock stay as they are.</summary>
    internal void Release()
    {
        (Log, Sales) = (Log with { Movements = [], Sold = [] }, []);
        Shelf.Release();
        SoldShare?.Curve.Release();
    }

    /// <param name="known">The design.</param>
    /// <param name="log">Its lines.</param>
    /// <param name="choices">What is asked.</param>
    /// <param name="good">What the designs of its profile say of good shares.</param>
    public static DesignEvidence Of(KnownDesign known, LogOfDesign log, EvidenceChoices choices, GoodPriors good) => new(known, log, choices, good);
}
