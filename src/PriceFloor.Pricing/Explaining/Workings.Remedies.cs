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
        var figures = remedies.Figures;
        var formulas = new RemedyFormulas<WrittenFigure>(figures.Check);
        yield return Line(formulas.Room, "what the price leaves for bench time");
        yield return Line(formulas.Gap, "what the price is short of");
        if (!figures.CanBeHelped)
            yield break;
        IEnumerable<Working> ways =
            [.. OfTime(formulas, figures), .. OfCosts(formulas), .. OfYield(figures), .. OfIncome(formulas, figures),
                .. OfBalance(figures, remedies.Balanced)];
        foreach (var line in ways)
            yield return line;
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

    private static IEnumerable<Working> OfIncome(RemedyFormulas<WrittenFigure> formulas, RemedyFigures figures)
    {
        yield return Line(formulas.MoreTaxableIncome, "further taxable income, a year");
        yield return Line(formulas.ProfitLeft, "the profit that is still needed after the cut");
        foreach (var line in Prefixed("lower", "on the lower profit: ", OfTax(formulas.OnProfitLeft, figures.Year.TaxRules.Levies)))
            yield return line;
        yield return Line(formulas.LeftAfterTax, "what that profit leaves after tax");
        yield return Line(formulas.MoreNetIncome, "further income already taxed, a year");
        if (formulas.MoreHoursHelp)
            yield return Line(formulas.WeekHours, "working hours a week, with the same weeks");
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
