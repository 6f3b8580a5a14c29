using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(UnitCost piece)
    {
        var formulas = FormulasOf(piece);
        foreach (var line in OfStarts(piece))
            yield return line;
        yield return Line(formulas.Time.Hours, "bench hours for each good piece");
        if (piece.Design.Development is { Hours: > 0 })
            yield return Line(formulas.DevelopmentHours, "one-off bench hours of the design a sold piece");
        yield return Line(formulas.BenchHours, "bench hours a sold piece");
        foreach (var (i, line) in piece.Design.Materials.Index())
            yield return Line(formulas.MaterialCosts[i], $"{line.Material ?? line.Name ?? "material"} for each good piece, used at {line.At}");
        if (piece.Design.Development is { Cost: > 0 })
            yield return Line(formulas.DevelopmentCost, "one-off cost of the design a sold piece");
        yield return Line(formulas.Materials, "materials a sold piece");
        yield return Line(formulas.SecondsCredit, "what its rejected pieces bring as seconds");
        yield return Line(formulas.BenchCost, "what its bench time must recover");
        yield return Line(formulas.Floor, "what one sold piece must bring in");
        foreach (var (i, thing) in piece.ScarceThings.Index())
            yield return Line(formulas.LoadsOf(thing, i + 1), $"loads of {thing} a sold piece");
        foreach (var line in OfYearlyPieces(new YearlyPiecesFormulas<WrittenFigure>(piece)))
            yield return line;
    }

    private static IEnumerable<Working> OfStarts(UnitCost piece)
    {
        var (formulas, steps) = (FormulasOf(piece).Time, piece.Design.Making.Steps ?? []);
        foreach (var (i, entering) in formulas.Entering.Index().Reverse())
            yield return Line(entering, $"pieces that enter step {i + 1}{Named(steps[i].Name)} for each good one");
        yield return Line(formulas.Starts, "pieces started for each good one");
    }

    private static IEnumerable<Working> OfYearlyPieces(YearlyPiecesFormulas<WrittenFigure> formulas)
    {
        yield return Line(formulas.InTheHours, "pieces that the year's bench hours make");
        foreach (var (i, (limit, _)) in formulas.Taken.Index())
            yield return Line(formulas.WithinLimits[i], $"pieces that the year's loads of {limit.Name} allow");
        yield return Line(formulas.Pieces, "pieces a year: the least of these");
        if (formulas.HasFloorWithinLimit)
            yield return Line(formulas.FloorWithinLimit,
                $"what a piece would have to bring in, its selling included, if {formulas.LimitBeforeHours!.Name} alone held the year back");
    }

    private static UnitCostFormulas<WrittenFigure> FormulasOf(UnitCost piece) =>
        new(piece.Design, piece.Year, new BenchTimeFormulas<WrittenFigure>(piece.Design.Making, piece.Year.Profile.Calendar));
}
