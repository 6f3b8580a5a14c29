using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Years;

/// <summary>
/// What the required revenue of a year is made of. 24,000 of rent, 12,000 for the household and 3,000 of tax less 2,000 of taxable income from
/// elsewhere: four parts that add up to 37,000. They add up to the required revenue unless other income is more than all of the rest.
/// </summary>
public static class RevenueParts
{
    /// <summary>The parts that are not 0: kinds of cost from the largest down, then household, tax and other income.</summary>
    public static IReadOnlyList<RevenuePart> Of(StudioYear year)
    {
        var kinds = ExpensesOf(year)
            .GroupBy(one => one.Kind, (kind, all) => new RevenuePart(RevenuePartOf.Expenses, kind, all.Sum(one => one.Amount)))
            .OrderByDescending(part => part.Amount).ThenBy(part => part.CostKind);
        RevenuePart[] rest =
        [
            new(RevenuePartOf.Household, null, year.Need),
            new(RevenuePartOf.Tax, null, year.TaxOnProfit),
            new(RevenuePartOf.OtherIncome, null, -year.TaxableIncome),
        ];
        return [.. kinds.Concat(rest).Where(part => part.Amount != 0)];
    }

    private static IEnumerable<(CostKind Kind, decimal Amount)> ExpensesOf(StudioYear year)
    {
        foreach (var line in year.Profile.Expenses.Where(line => line.Deductible))
            yield return (line.CostKind ?? CostKind.Other, ByYear(line));
        foreach (var line in year.Profile.Household.Where(line => line.BusinessShare > 0))
            yield return (line.CostKind ?? CostKind.HomeWorkspace, ByYear(line) * line.BusinessShare);
        yield return (CostKind.Depreciation, year.Depreciation);
    }

    private static decimal ByYear(IRecurring line) => line.Amount * line.TimesAYear();
}
