using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(StudioYear year)
    {
        var formulas = new YearFormulas<WrittenFigure>(year.Profile, year.YearStart, year.TaxRules);
        return [.. OfCosts(formulas.Costs, year), .. OfHours(formulas, year), .. OfResult(formulas, year)];
    }

    private static IEnumerable<Working> OfCosts(CostFormulas<WrittenFigure> costs, StudioYear year)
    {
        yield return Line(costs.AllocatedExpenses, "expenses that bench time must recover, a year");
        yield return Line(costs.Traced, "expenses recovered on designs or by channels, a year");
        foreach (var (i, machine) in costs.Machines.Index())
            foreach (var line in OfMachine(machine, $"machine {i + 1}{Named(year.Profile.Equipment[i].Name)}"))
                yield return line;
        yield return Line(costs.Depreciation, "what equipment loses in the year");
        yield return Line(costs.BusinessShares, "business shares of household lines, a year");
        yield return Line(costs.Allocated, "all that bench time must recover before pay and tax");
        yield return Line(costs.Expenses, "all expenses of the year");
        yield return Line(costs.NotDeductible, "paid out of taxed money, a year");
        yield return Line(costs.Household, "what the household lives on, a year");
        yield return Line(costs.NetIncome, "other income already taxed, a year");
        yield return Line(costs.TaxableIncome, "other income still to be taxed, a year");
    }

    private static IEnumerable<Working> OfMachine(DepreciationFormulas<WrittenFigure> machine, string name)
    {
        foreach (var (number, lost, book) in machine.Earlier ?? [])
        {
            yield return Line(lost, $"what {name} lost in year {number} of its use");
            yield return Line(book, $"what {name} was worth after it");
        }

        yield return Line(machine.Loss, $"what {name} loses in the year");
    }

    private static IEnumerable<Working> OfHours(YearFormulas<WrittenFigure> formulas, StudioYear year)
    {
        yield return Line(formulas.Hours.Workdays, "working days");
        yield return Line(formulas.Hours.BenchHours, "hours at the bench, helpers' included");
        if (year.Profile.Calendar.SellingShare > 0)
            yield return Line(formulas.Hours.SellingHours, "hours of selling that channels are charged for");
        yield return Line(formulas.Hours.CarryingHours, "hours that carry the year: those of them that find work that sells");
        if (year.Profile.Pay is not null)
            yield return Line(formulas.Needs.PayAYear, "the least pay, a year");
        yield return Line(formulas.Needs.Need, "what must be left after tax");
    }

    private static IEnumerable<Working> OfResult(YearFormulas<WrittenFigure> formulas, StudioYear year)
    {
        foreach (var line in OfProfit(formulas.Profit, year.TaxRules))
            yield return line;
        foreach (var line in OfTax(formulas.OnProfit, year.TaxRules.Levies))
            yield return line;
        yield return Line(formulas.ProfitAfterTax, "what that profit leaves: the need again");
        yield return Line(formulas.RequiredRevenue, "what sales must bring in");
        yield return Line(formulas.BenchMustEarn, "what bench time must recover");
        yield return Line(formulas.PerDay, "each working day must take");
        yield return Line(formulas.PerWeek, "each working week must take");
        yield return Line(formulas.PerBenchHour, "each hour at the bench or of selling must bring");
        yield return Line(formulas.TakeHomePerHour, "reaches the household for each working hour");
    }

    /// <summary>The start of the straight piece of the tax that the profit lies in, the tax there, and what one more unit leaves.</summary>
    private static IEnumerable<Working> OfProfit(ProfitFormulas<WrittenFigure> profit, Tax tax)
    {
        var (levies, (number, count)) = (tax.Levies, tax.PlaceOf(profit.UnitCost));
        if (profit.Start.Value != 0)
        {
            yield return Line(profit.Start,
                $"the tax is a line of {count} straight pieces: the profit at which piece {number} starts, in which the one that is sought lies");
            foreach (var line in Prefixed("pieceStart", "there: ", OfTax(profit.AtStart, levies)))
                yield return line;
            yield return Line(profit.KeptAtStart, "what is left there after tax");
        }

        if (levies.Count > 0)
        {
            foreach (var (i, paid) in profit.PaidOfOneMore.Index())
                yield return Line(paid, $"from there on, of each further unit, levy {i + 1}{Named(levies[i].Name)}");
            yield return Line(profit.KeptOfOneMore, "what each further unit leaves");
        }

        yield return Line(profit.Profit, "the smallest profit that leaves the need after tax");
    }

    private static IEnumerable<Working> OfTax(TaxFormulas<WrittenFigure> tax, IReadOnlyList<Levy> levies)
    {
        foreach (var (i, levy) in levies.Index())
        {
            yield return Line(tax.Bases[i], $"what levy {i + 1}{Named(levy.Name)} is charged on");
            yield return Line(tax.Levies[i], $"levy {i + 1}{Named(levy.Name)}");
        }

        yield return Line(tax.Total, "tax on that profit");
    }

    private static IEnumerable<Working> OfSurplus(SurplusFormulas<WrittenFigure> formulas, StudioYear year, Surplus? surplus)
    {
        if (surplus is { Tax: SurplusTax.After })
        {
            yield return Line(formulas.NeedWithSurplus, "what must be left after tax, a wanted surplus included");
            foreach (var line in Prefixed("askedFor", "for that: ", OfProfit(formulas.Leaving, year.TaxRules)))
                yield return line;
        }

        yield return Line(formulas.Profit, "the profit before tax that is asked for, a wanted surplus included");
        yield return Line(formulas.BenchMustEarn, "what bench time must recover, a wanted surplus included");
    }
}
