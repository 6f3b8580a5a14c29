using PriceFloor.Pricing.Planning;
using PriceFloor.Pricing.Planning.Solver;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(DesignBudget budget)
    {
        if (budget.AskedByMaterials)
        {
            yield return new("room", "left of the net for bench time", $"net - {Number(budget.Given)}", budget.Room);
            if (budget.Minutes is { } minutes)
                yield return new("minutes", "bench minutes that it pays for", "room / perBenchHour * 60", minutes);
        }
        else
        {
            yield return new("room", "left of the net for materials", $"net - perBenchHour * {Number(budget.Given)} / 60", budget.Room);
        }
    }

    public static IEnumerable<Working> Of(BestYear best)
    {
        foreach (var line in Of(best.Plan))
            yield return line;
        var isMoney = best.Goal == MixGoal.MaximumSurplus;
        foreach (var (i, use) in best.Mix.Uses.Index())
        {
            if (use.WorthOfOneMore is not { } worth)
                continue;
            var again = isMoney ? best.Mix.Contribution + worth : best.Mix.Hours - worth;
            yield return new($"withOneMore{i + 1}", $"{(isMoney ? "what the best plan leaves" : "the fewest hours")} with one more of {use.Name}, solved again", Number(again), again);
            yield return new($"worthOfOneMore{i + 1}", $"what one more of {use.Name} is worth", isMoney ? $"withOneMore{i + 1} - contribution" : $"planHours - withOneMore{i + 1}", worth);
        }
    }

    private static IEnumerable<Working> OfSurplus(YearPlan plan)
    {
        yield return new("profitAskedFor", "the profit before tax that is asked for, a wanted surplus included", Number(plan.ProfitAskedFor), plan.ProfitAskedFor);
        foreach (var line in Prefixed("askedFor", "on the profit asked for: ", OfLevies(plan.Year, plan.ProfitAskedFor, "profitAskedFor")))
            yield return line;
        yield return new("planProfit", "the profit before tax that the plan brings", "contribution - allocated + taxableIncome", plan.Profit);
        foreach (var line in Prefixed("plan", "on the plan's profit: ", OfLevies(plan.Year, plan.Profit, "planProfit")))
            yield return line;
        yield return new("surplusAfterTax", "what is left once the larger profit is taxed too", "planProfit - planTax - (profitAskedFor - askedForTax)", plan.SurplusAfterTax);
    }

    public static IEnumerable<Working> Of(YearPlan plan)
    {
        foreach (var (i, line) in plan.Lines.Index())
        {
            yield return new($"contribution{i + 1}", $"what one sale of line {i + 1} leaves for the pool",
                $"{Number(line.Sale.Net)} - {Number(line.Piece.Materials)} + {Number(line.Piece.SecondsCredit)}", line.Contribution);
            yield return new($"lineHours{i + 1}", $"bench hours of line {i + 1}", $"{Number(line.Units)} * {Number(line.Piece.BenchHours)}", line.BenchHours);
            yield return new($"lineContribution{i + 1}", $"what line {i + 1} leaves for the pool", $"{Number(line.Units)} * contribution{i + 1}", line.TotalContribution);
            yield return new($"perBenchHour{i + 1}", $"the same for each of its bench hours", $"contribution{i + 1} / {Number(line.Piece.BenchHours)}", line.PerBenchHour);
        }

        yield return new("benchMustEarnWithSurplus", "what bench time must recover, a wanted surplus included", Number(plan.Pool), plan.Pool);
        yield return new("contribution", "what all lines leave for the pool", Sum(plan.Lines.Select((_, i) => $"lineContribution{i + 1}")), plan.Contribution);
        yield return new("surplusBeforeTax", "by how much the year closes; negative when short", "contribution - benchMustEarnWithSurplus", plan.SurplusBeforeTax);
        if (plan.Closes)
            foreach (var line in OfSurplus(plan))
                yield return line;
        yield return new("planHours", "bench hours of the plan", Sum(plan.Lines.Select((_, i) => $"lineHours{i + 1}")), plan.BenchHours);
        yield return new("hoursAvailable", "bench hours of the year less those kept back", $"benchHoursOfTheYear - {Number(plan.Year.BenchHours - plan.HoursAvailable)}", plan.HoursAvailable);
        yield return new("planMaterials", "materials that the plan uses", Sum(plan.Lines.Select(line => $"{Number(line.Units)} * {Number(line.Piece.Materials)}")), plan.Materials);
        foreach (var (i, use) in plan.Loads.Index())
            yield return new($"loads{i + 1}", $"loads of {use.Name}", Sum(plan.Lines.Select(line => (line.Units, Each: line.Piece.LoadsOf(use.Name))).Where(line => line.Each > 0).Select(line => $"{Number(line.Units)} * {Number(line.Each)}")), use.Loads);
    }
}
