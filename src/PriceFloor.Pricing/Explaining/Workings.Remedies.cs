using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>
    /// After the workings of the check: what each way to fix the price is computed from, then what the balanced proposal gives to each.
    /// </summary>
    public static IEnumerable<Working> Of(Remedies remedies)
    {
        var lines = OfBound(remedies.Figures, remedies.CanBeHelped);
        if (remedies.TowardTarget is { } target)
            lines =
                lines.Concat(Prefixed("toTarget", "toward the target: ", OfMostForTheFloor(remedies).Concat(OfBound(target, remedies.CanBeHelped))));
        return remedies.CanBeHelped ? lines.Concat(OfIncome(remedies)).Concat(OfBalance(remedies.Figures, remedies.Balanced)) : lines;
    }

    private static IEnumerable<Working> OfMostForTheFloor(Remedies remedies)
    {
        yield return Line(RemedyBound.MostForTheFloor<WrittenFigure>(remedies.Check),
            "the price before tax over the retail multiple, rounded down: the highest wholesale price that goes with it");
    }

    /// <summary>What the hours, materials and losses of a piece must stay within, and by how much they do not.</summary>
    private static IEnumerable<Working> OfBound(RemedyFigures figures, bool canBeHelped)
    {
        var formulas = new RemedyFormulas<WrittenFigure>(figures.UnitCost, figures.Bound);
        yield return Line(formulas.Room, "what the price leaves for the hours of a piece");
        yield return Line(formulas.SellingCost, "what its hours of selling must recover");
        yield return Line(formulas.Gap, "what the price is short of");
        if (!canBeHelped)
            yield break;
        foreach (var line in OfTime(formulas, figures).Concat(OfCosts(formulas)).Concat(OfYield(figures)))
            yield return line;
        if (formulas.MoreHoursHelp)
            yield return Line(formulas.WeekHours, "working hours a week, with the same weeks");
    }

    private static IEnumerable<Working> OfTime(RemedyFormulas<WrittenFigure> formulas, RemedyFigures figures)
    {
        yield return Line(FormulasOf(figures.UnitCost).FixedHours, "bench hours a sold piece that must not be shortened");
        if (!formulas.PaysForSomeTime)
            yield break;
        yield return Line(formulas.EnoughHours, "bench hours a sold piece that the price pays for");
        yield return Line(formulas.EnoughMinutes, "the same in minutes");
    }

    private static IEnumerable<Working> OfCosts(RemedyFormulas<WrittenFigure> formulas)
    {
        yield return Line(formulas.Cut, "less for bench time to recover, a year");
        yield return Line(formulas.EnoughForBench, "what the price lets bench time recover, a year");
        yield return Line(formulas.EnoughMaterials, "materials a sold piece that the price allows");
        yield return Line(formulas.NewMaterials, "materials that a new design with these minutes may use");
    }

    private static IEnumerable<Working> OfYield(RemedyFigures figures)
    {
        if (figures.BetterYield is not { } better)
            yield break;
        foreach (var line in Prefixed("flawless", "with no such loss: ", Of(better.Flawless).TakeWhile(line => line.Symbol != "floor")))
            yield return line;
        var formulas = new BetterYieldFormulas<WrittenFigure>(figures, better.Flawless);
        var where = figures.WorstStep is { } step ? $" in step {step + 1}" : "";
        yield return Line(formulas.FlawlessCost, $"what a piece must bring in where nothing is lost{where}");
        yield return Line(formulas.PerStart, "what each further start there costs");
        if (!formulas.IsEnough)
            yield break;
        yield return Line(formulas.Starts, "starts there for each good piece that the price pays for");
        yield return Line(formulas.GoodShare, "the good share that is enough");
    }

    private static IEnumerable<Working> OfIncome(Remedies remedies)
    {
        var year = remedies.Figures.Year;
        var formulas = new IncomeFormulas<WrittenFigure>(year, remedies.Cut,
            remedies.TowardTarget is null ? "cut" : IncomeFormulas<WrittenFigure>.LargerCutSymbol);
        if (remedies.TowardTarget is { } target)
            yield return Line(IncomeFormulas<WrittenFigure>.LargerCut(remedies.Figures.Cut, target.Cut), "the larger of both cuts");
        yield return Line(formulas.MoreTaxableIncome, "further taxable income, a year");
        yield return Line(formulas.ProfitLeft, "the profit that is still needed after the cut");
        foreach (var line in Prefixed("lower", "on the lower profit: ", OfTax(formulas.OnProfitLeft, year.TaxRules.Levies)))
            yield return line;
        yield return Line(formulas.LeftAfterTax, "what that profit leaves after tax");
        yield return Line(formulas.MoreNetIncome, "further income already taxed, a year");
    }

    private static IEnumerable<Working> OfBalance(RemedyFigures figures, BalancedRemedy? balanced)
    {
        var ways = (balanced?.Parts ?? []).Select(part => part.Way).ToList();
        foreach (var (way, part, figure) in BalancedFormulas<WrittenFigure>.PartsOf(figures, ways))
        {
            var by = way switch { RemedyKind.WorkFaster => "faster work", RemedyKind.CheaperMaterials => "cheaper materials", _ => "lower costs" };
            yield return Line(part, $"of the gap closed by {by}");
            yield return Line(figure, way switch
            {
                RemedyKind.WorkFaster => "bench hours a sold piece in the balanced proposal",
                RemedyKind.CheaperMaterials => "materials a sold piece in the balanced proposal",
                _ => "less for bench time to recover in the balanced proposal",
            });
        }
    }
}
