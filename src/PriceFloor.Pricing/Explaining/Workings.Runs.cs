using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>The run from the design's own figures: pieces, loads, bench hours, materials, seconds.</summary>
    public static IEnumerable<Working> Of(Run run)
    {
        var formulas = run.FormulasOf<WrittenFigure>();
        foreach (var line in OfStarts(run.Piece).Concat(OfTime(run, formulas.Time)))
            yield return line;
        if (run.Piece.Design.Development is { Hours: > 0 })
            yield return Line(formulas.DevelopmentHours, "the run's share of the design's one-off bench hours");
        yield return Line(formulas.BenchHours, "bench hours of the run");
        foreach (var (i, line) in run.Piece.Design.Materials.Index())
            yield return Line(formulas.MaterialCosts[i], $"{line.Material ?? line.Name ?? "material"} of the run, used at {line.At}");
        if (run.Terms.TrialPieces > 0)
            yield return Line(formulas.TrialMaterials, "materials of the trial pieces");
        if (run.Piece.Design.Development is { Cost: > 0 })
            yield return Line(formulas.DevelopmentCost, "the run's share of the design's one-off cost");
        yield return Line(formulas.Materials, "materials of the run");
        yield return Line(formulas.Seconds, "what its rejected pieces bring as seconds");
    }

    /// <summary>What done quotes took over what was quoted, those that ran over least first, and the median.</summary>
    public static IEnumerable<Working> Of(QuotesRun run)
    {
        var formulas = run.FormulasOf<WrittenFigure>();
        return
        [
            .. run.Done.Zip(formulas.Ratios, (quote, ratio) => Line(ratio, $"what {quote.Key} took over what was quoted")),
            Line(formulas.Median, "the median of these"),
        ];
    }

    private static IEnumerable<Working> OfTime(Run run, RunTimeFormulas<WrittenFigure> formulas)
    {
        var making = run.Piece.Design.Making;
        yield return Line(formulas.Quantity, "pieces wanted");
        yield return Line(formulas.Starts, run.Terms.Sure is null ? "pieces started for them" : "pieces started to be sure enough of them");
        if (run.Terms is { Learning: not null, TrialPieces: > 0 })
            yield return Line(formulas.LearnedFirst, "the first piece's time over the design's, by the learning curve");
        foreach (var (i, minutes) in formulas.StepMinutes.Index())
        {
            var step = making.Steps is { } steps ? $"step {i + 1}{Named(steps[i].Name)}" : "the making";
            if (making.Steps is not null)
                yield return Line(formulas.Entering[i], $"pieces that enter {step}");
            if (formulas.Loads[i].Formula is not null)
                yield return Line(formulas.Loads[i], $"whole loads of {step}");
            if (formulas.Learned[i].Formula is not null)
                yield return Line(formulas.Learned[i], $"pieces at today's minutes that {step} takes as long as, by the learning curve");
            yield return Line(minutes, $"bench minutes of {step}");
        }

        if (run.Terms.TrialPieces > 0)
            yield return Line(formulas.TrialMinutes, "bench minutes of the trial pieces");
        yield return Line(formulas.Minutes, "all bench minutes of the run");
    }
}
