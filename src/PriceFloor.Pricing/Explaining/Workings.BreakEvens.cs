using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(BreakEven breakEven)
    {
        var formulas = new BreakEvenFormulas<WrittenFigure>(breakEven.UnitCost, breakEven.Sale);
        yield return Line(formulas.Contribution, "what one sale leaves toward what bench time must recover");
        yield return Line(formulas.ExactUnits, "pieces that bring what bench time must recover, before rounding up");
        yield return Line(formulas.Units, "whole pieces that bring what bench time must recover");
        yield return Line(formulas.BenchHours, "bench hours that they take");
        yield return Line(formulas.Capacity, "whole pieces that the year's bench hours make");
        yield return Line(formulas.Revenue, "what buyers pay for them before sales tax and do not get back");
        yield return Line(formulas.ShareOfYear, "their part of the year's bench hours");
    }

    /// <summary>After the workings of the break-even.</summary>
    public static IEnumerable<Working> Of(PlannedSales planned)
    {
        var formulas = new PlannedSalesFormulas<WrittenFigure>(planned.BreakEven, planned.Planned);
        yield return Line(formulas.Planned, "pieces that are planned");
        yield return Line(formulas.MarginOfSafety, "by how much of the plan sales may fall before the year no longer closes");
        yield return Line(formulas.PlannedContribution, "what they leave toward what bench time must recover");
        if (formulas.AboveBreakEven)
            yield return Line(formulas.OperatingLeverage, "by what multiple a change of sales changes the surplus");
    }

    public static IEnumerable<Working> Of(MixBreakEven mix)
    {
        var formulas = new MixFormulas<WrittenFigure>(mix.Year, mix.Lines, mix.Surplus);
        return [.. formulas.Lines.SelectMany(OfSold), .. OfSurplus(formulas.Surplus, mix.Year, mix.Surplus), .. OfUnits(formulas)];
    }

    private static IEnumerable<Working> OfUnits(MixFormulas<WrittenFigure> formulas)
    {
        yield return Line(formulas.PerMixUnit, "what one unit of the mix leaves toward what bench time must recover");
        yield return Line(formulas.MixUnits, "units of the mix that bring what bench time must recover");
        foreach (var (i, units) in formulas.ExactUnits.Index())
        {
            yield return Line(units, $"pieces of line {i + 1}, before rounding");
            var direction = formulas.Lines[i].Contribution.Value > 0 ? "" : ", which leaves nothing, so rounded down";
            yield return Line(formulas.Units[i], $"whole pieces of line {i + 1}{direction}");
        }

        yield return Line(formulas.BenchHours, "bench hours that they take");
        yield return Line(formulas.Revenue, "what buyers pay for them before sales tax and do not get back");
        yield return Line(formulas.ShareOfYear, "their part of the year's bench hours");
    }
}
