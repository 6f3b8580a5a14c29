using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning;
using PriceFloor.Pricing.Planning.Solver;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(DesignBudget budget)
    {
        var formulas = new DesignBudgetFormulas<WrittenFigure>(budget.Year, budget.Sale, budget.Given, budget.AskedByMaterials);
        if (formulas.SellingHours.Value > 0)
            yield return Line(formulas.SellingHours, "hours of selling a piece");
        yield return Line(formulas.Room, budget.AskedByMaterials ? "left of the net for bench time" : "left of the net for materials");
        if (budget.AskedByMaterials && budget.Minutes is not null)
            yield return Line(formulas.Minutes, "bench minutes that it pays for");
    }

    public static IEnumerable<Working> Of(BestYear best)
    {
        foreach (var line in Of(best.Plan).Concat(OfMonths(best)))
            yield return line;
        foreach (var (i, use) in best.Mix.Uses.Index())
            if (use.WithOneMore is { } again)
            {
                var optimum = best.Goal == MixGoal.MaximumSurplus ? best.Mix.Contribution : best.Mix.Hours;
                var formulas = new OneMoreFormulas<WrittenFigure>(best.Goal, optimum, again, i + 1);
                var what = best.Goal == MixGoal.MaximumSurplus ? "what the best plan leaves" : "the fewest hours";
                yield return Line(formulas.SolvedAgain, $"{what} with one more of {use.Name}, solved again");
                yield return Line(formulas.Worth, $"what one more of {use.Name} is worth");
            }
    }

    private static IEnumerable<Working> OfMonths(BestYear best)
    {
        foreach (var month in best.Resources.Select(one => one.Month).OfType<int>())
            yield return Line(best.HoursThrough<WrittenFigure>(month), $"bench hours of what is sold through month {month}");
    }

    public static IEnumerable<Working> Of(YearPlan plan)
    {
        var formulas = new PlanFormulas<WrittenFigure>(plan.Year, plan.Lines, plan.Surplus, plan.HoursKeptBack);
        var lines = formulas.Lines.SelectMany(OfLine);
        return [.. lines, .. OfSurplus(formulas.Surplus, plan.Year, plan.Surplus), .. OfClosing(formulas, plan), .. OfTotals(formulas, plan)];
    }

    private static IEnumerable<Working> OfLine(PlannedLineFormulas<WrittenFigure> line)
    {
        var number = line.Each.Number;
        foreach (var one in OfSold(line.Each))
            yield return one;
        yield return Line(line.Units, $"pieces of line {number}");
        yield return Line(line.BenchHours, $"bench hours of line {number}");
        if (line.SellingHours.Value > 0)
        {
            yield return Line(line.SellingHoursEach, $"hours of selling a piece of line {number}; the workings of its price check say how");
            yield return Line(line.SellingHours, $"hours of selling of line {number}");
        }

        yield return Line(line.Revenue, $"what buyers pay for line {number}");
        yield return Line(line.Proceeds, $"what reaches the studio for line {number}");
        yield return Line(line.Materials, $"materials of line {number}");
        yield return Line(line.Contribution, $"what line {number} leaves toward what bench time must recover");
        yield return Line(line.PerBenchHour, "the same for each of its bench hours");
    }

    /// <summary>What is known of one sale of a line: a price check of it shows how it comes about.</summary>
    private static IEnumerable<Working> OfSold(LineFormulas<WrittenFigure> line)
    {
        yield return Line(line.Net,
            $"reaches the studio for a piece of line {line.Number}; the workings of its price check say how, here with 12 decimals");
        yield return Line(line.Revenue, $"what buyers pay before sales tax for a piece of line {line.Number}, likewise");
        yield return Line(line.Materials, $"materials of a piece of line {line.Number}, likewise");
        yield return Line(line.SecondsCredit, $"what seconds bring for a piece of line {line.Number}, likewise");
        yield return Line(line.BenchHours, $"bench hours of a piece of line {line.Number}, likewise");
        yield return Line(line.Contribution, $"what one sale of line {line.Number} leaves toward what bench time must recover");
    }

    private static IEnumerable<Working> OfClosing(PlanFormulas<WrittenFigure> formulas, YearPlan plan)
    {
        yield return Line(formulas.Contribution, "what all lines leave toward what bench time must recover");
        yield return Line(formulas.SurplusBeforeTax, "by how much the year closes; negative when short");
        if (!plan.Closes)
            yield break;
        foreach (var line in Prefixed("askedFor", "on the profit asked for: ", OfTax(formulas.OnProfitAskedFor, plan.Year.TaxRules.Levies)))
            yield return line;
        yield return Line(formulas.Profit, "the profit before tax that the plan brings");
        foreach (var line in Prefixed("plan", "on the plan's profit: ", OfTax(formulas.OnProfit, plan.Year.TaxRules.Levies)))
            yield return line;
        yield return Line(formulas.SurplusAfterTax, "what is left once the larger profit is taxed too");
    }

    private static IEnumerable<Working> OfTotals(PlanFormulas<WrittenFigure> formulas, YearPlan plan)
    {
        yield return Line(formulas.Revenue, "what buyers pay before sales tax and do not get back");
        yield return Line(formulas.Proceeds, "what of it reaches the studio");
        yield return Line(formulas.BenchHours, "bench hours of the plan");
        yield return Line(formulas.HoursAvailable, "bench hours of the year less those kept back");
        if (plan.SellingHours > 0)
            yield return Line(formulas.SellingHours, "hours of selling that the plan takes");
        foreach (var (i, use) in plan.Stalls.Index())
            yield return Line(formulas.StallsOf(use.Stall, use.Lines, i + 1),
                $"stalls for line {string.Join(", ", use.Lines.Select(line => line + 1))}");
        yield return Line(formulas.Materials, "materials that the plan uses");
        foreach (var (i, use) in plan.Loads.Index())
        {
            var (each, all) = formulas.LoadsOf(use.Name, i + 1);
            foreach (var (line, loads) in each)
                yield return Line(loads, $"loads of {use.Name} for a piece of line {line + 1}; the workings of its floor price say how");
            yield return Line(all, $"loads of {use.Name}");
        }
    }
}
