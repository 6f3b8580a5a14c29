using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(StudioYear year)
    {
        var profile = year.Profile;
        var allocated = profile.Expenses.Where(line => line.Deductible && line.TracedTo is null).ToList();
        yield return new("allocatedExpenses", "expenses that bench time must recover, a year", SumOf(allocated), allocated.Sum(Annual.Amount));
        yield return new("traced", "expenses recovered on designs or by channels, a year",
            SumOf(profile.Expenses.Where(line => line.Deductible && line.TracedTo is not null)), year.Traced);
        yield return new("depreciation", "what equipment loses in the year",
            Sum(profile.Equipment.Select(thing => Number(Depreciation.InYear(thing, year.YearStart)))), year.Depreciation);
        yield return new("businessShares", "business shares of household lines, a year",
            Sum(profile.Household.Where(line => line.BusinessShare > 0).Select(line => $"{Yearly(line)} * {Number(line.BusinessShare)}")), year.BusinessShares);
        yield return new("allocated", "all that bench time must recover before pay and tax", "allocatedExpenses + depreciation + businessShares", year.Allocated);
        yield return new("expenses", "all expenses of the year", "allocated + traced", year.Expenses);
        yield return new("notDeductible", "paid out of taxed money, a year", SumOf(profile.Expenses.Where(line => !line.Deductible)), year.NotDeductible);
        yield return new("household", "what the household lives on, a year",
            Sum([.. profile.Household.Select(line => $"{Yearly(line)} * (1 - {Number(line.BusinessShare)})"), "notDeductible"]), year.Household);
        yield return new("netIncome", "other income already taxed, a year", SumOf(profile.OtherIncome.Where(line => line.Kind == IncomeKind.Net)), year.NetIncome);
        yield return new("taxableIncome", "other income still to be taxed, a year", SumOf(profile.OtherIncome.Where(line => line.Kind == IncomeKind.Taxable)), year.TaxableIncome);

        var calendar = profile.Calendar;
        yield return new("workdays", "working days",
            Sum([$"{Number(calendar.WeeksPerYear)} * {Number(calendar.DaysPerWeek)}"]) + string.Concat(profile.OtherIncome.Where(line => line.DaysPerYear > 0).Select(line => $" - {Number(line.DaysPerYear)}")), year.Workdays);
        yield return new("benchHoursOfTheYear", "hours at the bench, helpers' included",
            Sum([$"workdays * {Number(calendar.HoursPerDay)} * {Number(calendar.BenchShare)}", .. profile.Helpers.Select(helper => Number(helper.BenchHoursPerYear))]), year.BenchHours);
        if (profile.Pay is { } pay)
            yield return new("payAYear", "the least pay, a year",
                pay.Per == PayPer.Hour ? $"{Number(pay.Amount)} * workdays * {Number(calendar.HoursPerDay)}" : $"{Number(pay.Amount)} * {pay.Per switch { PayPer.Week => 52, PayPer.Month => 12, _ => 1 }}", year.PayAYear);
        yield return new("need", "what must be left after tax",
            profile.Pay is null ? "max(0, household - netIncome)" : "max(0, household - netIncome, payAYear + notDeductible)", year.Need);
        foreach (var line in OfTax(year))
            yield return line;
        yield return new("requiredRevenue", "what sales must bring in", "max(0, expenses + profitBeforeTax - taxableIncome)", year.RequiredRevenue);
        yield return new("benchMustEarn", "what bench time must recover", "max(0, allocated + profitBeforeTax - taxableIncome)", year.Pool);
        yield return new("perDay", "each working day must take", "requiredRevenue / workdays", year.PerDay);
        yield return new("perWeek", "each working week must take", $"perDay * {Number(calendar.DaysPerWeek)}", year.PerWeek);
        yield return new("perBenchHour", "each hour at the bench must bring", "benchMustEarn / benchHoursOfTheYear", year.PerBenchHour);
        yield return new("takeHomePerHour", "reaches the household for each working hour", $"max(0, need - notDeductible) / (workdays * {Number(calendar.HoursPerDay)})", year.TakeHomePerHour);
    }

    private static IEnumerable<Working> OfTax(StudioYear year)
    {
        var (from, kept, keptOfOneMore) = year.TaxRules.LinearPieceLeaving(year.Need);
        yield return new("profitBeforeTax", "the smallest profit that leaves the need after tax",
            $"{Number(from)} + max(0, need - {Number(kept)}) / {Number(keptOfOneMore)}", year.Profit);
        foreach (var line in OfLevies(year, year.Profit, "profitBeforeTax"))
            yield return line;
    }

    private static IEnumerable<Working> OfLevies(StudioYear year, decimal profit, string symbol)
    {
        var levies = Tax.Levies(year.Profile.Tax);
        var paid = year.TaxRules.LeviesOn(profit);
        for (var i = 0; i < levies.Count; i++)
        {
            var levy = levies[i];
            var deductions = levies.Take(i).Select((earlier, j) => earlier.DeductibleShare > 0 ? $" - {Number(earlier.DeductibleShare)} * levy{j + 1}" : "");
            var charged = decimal.Max(0, levy.Share * profit + levy.OtherBase - levy.Allowance - levies.Take(i).Select((earlier, j) => earlier.DeductibleShare * paid[j]).Sum());
            yield return new($"base{i + 1}", $"what levy {i + 1}{Named(levy.Name)} is charged on",
                $"max(0, {Number(levy.Share)} * {symbol} + {Number(levy.OtherBase)} - {Number(levy.Allowance)}{string.Concat(deductions)})", charged);
            yield return new($"levy{i + 1}", $"levy {i + 1}{Named(levy.Name)}",
                InBands(levy, $"base{i + 1}") + (levy.OtherBase == 0 ? "" : $" - ({InBands(levy, $"max(0, {Number(levy.OtherBase)} - {Number(levy.Allowance)})")})"), paid[i]);
        }

        yield return new("tax", "tax on that profit", Sum(levies.Select((_, i) => $"levy{i + 1}")), paid.Sum());
    }

    private static string InBands(Levy levy, string charged)
    {
        var lower = 0m;
        var parts = new List<string>();
        foreach (var band in levy.Bands)
        {
            parts.Add(band.UpTo is { } top
                ? $"{Number(band.Rate)} * max(0, min({charged}, {Number(top)}) - {Number(lower)})"
                : $"{Number(band.Rate)} * max(0, {charged} - {Number(lower)})");
            lower = band.UpTo ?? lower;
        }

        return Sum(parts);
    }
}
