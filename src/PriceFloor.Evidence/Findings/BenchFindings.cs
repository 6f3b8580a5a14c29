using System.Globalization;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>Minutes and good shares of a design, from its bench entries.</summary>
internal sealed class BenchFindings
{
    private const int FewEntries = 5, FewStarts = 20;

    /// <summary>The pointer of a finding about the minutes of a whole piece that has steps.</summary>
    public const string OfSteps = "/making/steps";

    private const string OfEntries = "bench-log entries", OfStarts = "pieces started", ByCurve = "learning-curve";

    private readonly Design _design;
    private readonly StudioCalendar _calendar;
    private readonly decimal _level;
    private readonly GoodPriors _good;
    private readonly List<Found<Design>> _found = [];

    private BenchFindings(Design design, StudioCalendar calendar, (decimal Level, GoodPriors Good) asked) =>
        (_design, _calendar, _level, _good) = (design, calendar, asked.Level, asked.Good);

    public IReadOnlyList<Found<Design>> Found => _found;

    /// <summary>The work of the whole piece if it has a curve, else of the first step that has one, else the first that was timed.</summary>
    public TimedWork? Timed { get; private set; }

    /// <summary>The curve of that work.</summary>
    public LearningFit? Learning => Timed?.Fit;

    /// <summary>Why there is none.</summary>
    public LearningFit.Absence NoLearning => Timed?.NoFit ?? LearningFit.Absence.TooFewEntries;

    /// <summary>Whether loads fail together: pieces of a load stand for each other more than twice.</summary>
    public bool FailsInLots { get; private set; }

    /// <summary>The findings of a design's entries, in order of position.</summary>
    public static BenchFindings Of(Design design, StudioCalendar calendar, IReadOnlyList<BenchEntry> entries,
        (decimal Level, GoodPriors Good) asked)
    {
        var findings = new BenchFindings(design, calendar, asked);
        var steps = design.Making.Steps ?? [];
        var whole = entries.Where(entry => entry.Step is null).ToList();
        var bySteps = steps.Select(step => entries.Where(entry => entry.Step is not null && entry.Step == step.Name).ToList()).ToList();
        foreach (var (index, own) in bySteps.Index())
            findings.StepMinutes(index, own);
        var byStep = findings._found.Exists(found => found.Finding.Says != Says.TooFew);
        findings.WholeMinutes(whole, drafted: !byStep);
        foreach (var (index, own) in bySteps.Index())
            findings.Good(own, index, drafted: true);
        findings.Good(whole, null, drafted: !bySteps.Exists(own => own.Exists(entry => entry.Good is not null)));
        return findings;
    }

    private void StepMinutes(int index, List<BenchEntry> entries)
    {
        var step = _design.Making.Steps![index];
        var timed = WithMinutes(entries);
        if (timed.Count == 0)
            return;
        if (step.BatchSize > 1)
        {
            Loads(index, step, timed);
            return;
        }

        var (estimate, method) = PerPiece(timed, step.MayBeHurried ? 0 : null, step.Name);
        Add(Text($"/making/steps/{index}/handsOnMinutes"), estimate, timed.Count, step.HandsOnMinutes, method,
            design => WithStep(design, index, one => one with { HandsOnMinutes = estimate.Value }));
    }

    /// <summary>A step of loads keeps its minutes for a load, and its load as it usually is.</summary>
    private void Loads(int index, Step step, List<BenchEntry> timed)
    {
        var minutes = Ratio.Of([.. timed.Select(entry => new RatioPart(entry.Minutes!.Value, 1))])!.At(_level, Estimate.MinuteDecimals);
        var size = Ratio.Of([.. timed.Select(entry => new RatioPart(entry.Started!.Value, 1))])!.At(_level, Estimate.MinuteDecimals, least: 1);
        Add(Text($"/making/steps/{index}/handsOnMinutes"), minutes, timed.Count, step.HandsOnMinutes, null,
            design => WithStep(design, index, one => one with { HandsOnMinutes = minutes.Value }));
        Add(Text($"/making/steps/{index}/batchSize"), size, timed.Count, step.BatchSize, null,
            design => WithStep(design, index, one => one with { BatchSize = size.Value }));
    }

    private void WholeMinutes(List<BenchEntry> entries, bool drafted)
    {
        var timed = WithMinutes(entries);
        if (timed.Count == 0)
            return;
        var making = _design.Making;
        var unhurried = (making.Steps ?? []).Where(step => !step.MayBeHurried).Sum(step => step.HandsOnMinutes / step.BatchSize);
        var (estimate, method) = PerPiece(timed, unhurried, step: null);
        var stored = making switch
        {
            { Steps: { } steps } => steps.Sum(step => step.HandsOnMinutes / step.BatchSize),
            { PiecesPerDay: { } pieces } => 60 * _calendar.HoursPerDay * _calendar.BenchShare / pieces,
            { PiecesPerBenchDay: { } pieces } => 60 * _calendar.HoursPerDay / pieces,
            _ => making.MinutesPerPiece ?? 0,
        };
        var change = making.Steps is null
            ? (design => design with
            {
                Making = design.Making with { PiecesPerDay = null, PiecesPerBenchDay = null, MinutesPerPiece = estimate.Value },
            })
            : HurriedSteps.Taking(_design, estimate.Value);
        Add(making.Steps is null ? "/making/minutesPerPiece" : OfSteps, estimate, timed.Count,
            Rounding.Nearest(stored, Estimate.MinuteDecimals), method, drafted ? change : null);
    }

    /// <summary>Minutes a piece: the mean, or today's point of the curve where the work got quicker.</summary>
    private (Estimate Estimate, string? Method) PerPiece(List<BenchEntry> timed, decimal? unhurried, string? step)
    {
        var ratio = Ratio.Of([.. timed.Select(entry => new RatioPart(entry.Minutes!.Value, entry.Started!.Value))])!;
        if (unhurried is not { } fixedMinutes)
            return (ratio.At(_level, Estimate.MinuteDecimals), null);
        var entries = timed.Select(entry => new LearningEntry(entry.Started!.Value, entry.Minutes!.Value)).ToList();
        var (fit, reason) = LearningFit.Of(entries, fixedMinutes, _level);
        if (Timed is null || (fit is not null && (step is null || Timed.Fit is null)))
            Timed = new TimedWork(step, fixedMinutes, entries, fit, reason);
        return fit is null ? (ratio.At(_level, Estimate.MinuteDecimals), null) : (fit.Today, ByCurve);
    }

    /// <summary>Of a whole piece the share speaks about the step that loses most, so that all steps together come out as it says.</summary>
    private void Good(List<BenchEntry> entries, int? ofStep, bool drafted)
    {
        if (GoodLots.ShareOf(entries) is not { } share)
            return;
        var steps = _design.Making.Steps ?? [];
        var step = ofStep ?? (steps.Count == 0 ? null : Lowest(steps));
        var others = ofStep is null ? steps.Where((_, index) => index != step).Aggregate(1m, (all, one) => all * one.GoodShare) : 1;
        var prior = _good.For(ofStep is { } own ? steps[own].Name : null);
        var estimate = Over(share.At(_level, prior), others);
        FailsInLots |= share.Together > 2;
        var isEnough = share.Pieces >= FewStarts && share.Lots >= FewEntries && estimate.Value > 0;
        var stored = step is { } index ? steps[index].GoodShare : _design.Making.GoodShare;
        _found.Add(new Found<Design>(
            new Finding
            {
                Pointer = step is { } at ? Text($"/making/steps/{at}/goodShare") : "/making/goodShare",
                Estimate = estimate,
                Observations = share.Pieces,
                Of = OfStarts,
                Worth = share.Together == 1 ? null : Rounding.Nearest(share.Worth, 0),
                OwnWeight = prior == SharePrior.Nothing ? null : Rounding.Nearest(share.Worth / (share.Worth + prior.Weight), Estimate.ShareDecimals),
                Stored = stored,
                Says = Finding.Judge(estimate, stored, isEnough),
            },
            !drafted ? null : step is { } one ? design => WithStep(design, one, old => old with { GoodShare = estimate.Value })
                : design => design with { Making = design.Making with { GoodShare = estimate.Value } }));
    }

    private void Add(string pointer, Estimate estimate, int entries, decimal stored, string? method, Func<Design, Design>? change) =>
        _found.Add(new Found<Design>(
            new Finding
            {
                Pointer = pointer,
                Estimate = estimate,
                Observations = entries,
                Of = OfEntries,
                Stored = stored,
                Says = Finding.Judge(estimate, stored, entries >= FewEntries),
                Method = method,
            },
            change));

    private static List<BenchEntry> WithMinutes(List<BenchEntry> entries) =>
        entries.FindAll(entry => entry is { Started: not null, Minutes: not null });

    private static int Lowest(IReadOnlyList<Step> steps) => steps.Index().MinBy(step => step.Item.GoodShare).Index;

    private static Estimate Over(Estimate share, decimal others) => others == 1 ? share
        : new(Part(share.Value, others), share.Low is { } low ? Part(low, others) : null, share.High is { } high ? Part(high, others) : null);

    private static decimal Part(decimal share, decimal others) => decimal.Min(1, Rounding.Nearest(share / others, Estimate.ShareDecimals));

    private static Design WithStep(Design design, int index, Func<Step, Step> change) => design with
    {
        Making = design.Making with { Steps = [.. design.Making.Steps!.Select((step, at) => at == index ? change(step) : step)] },
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
