using System.Globalization;

namespace PriceFloor.Pricing;

/// <summary>One line of the workings. The formula uses numbers and the symbols of earlier lines, with + - * / ( ) min and max.</summary>
/// <param name="Symbol">A short name, unique in the answer, that later formulas use.</param>
/// <param name="Label">What it is, in words.</param>
/// <param name="Formula">How it is computed.</param>
/// <param name="Value">What comes out, unrounded.</param>
public sealed record Working(string Symbol, string Label, string Formula, decimal Value);

/// <summary>Every intermediate quantity of an answer, in order: enough to redo it by hand, or by a few lines of script.</summary>
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

    public static IEnumerable<Working> Of(Piece piece)
    {
        var time = piece.Time;
        var making = piece.Design.Making;
        if (making.Steps is { } steps)
            foreach (var (i, step) in steps.Index().Reverse())
                yield return new($"entering{i + 1}", $"pieces that enter step {i + 1}{Named(step.Name)} for each good one",
                    i + 1 < steps.Count ? $"entering{i + 2} / {Number(step.GoodShare)}" : $"1 / {Number(step.GoodShare)}", time.Entering[i]);
        yield return new("starts", "pieces started for each good one", making.Steps is null ? $"1 / {Number(making.GoodShare)}" : "entering1", time.Starts);
        yield return new("hoursPerGoodPiece", "bench hours for each good piece", HoursFormula(making, piece.Year.Profile.Calendar), time.Hours);
        yield return new("benchHours", "bench hours a sold piece", $"hoursPerGoodPiece / {Number(piece.SoldShare)}", piece.BenchHours);
        foreach (var (i, line) in piece.Design.Materials.Index())
            yield return new($"material{i + 1}", $"{line.Material ?? line.Name ?? "material"} for each good piece, used at {line.At}",
                $"{CostFormula(line, piece.Year)} * {AtFormula(line.At, making)}", piece.MaterialCosts[i]);
        yield return new("materials", "materials a sold piece",
            $"({Sum(piece.MaterialCosts.Select((_, i) => $"material{i + 1}"))}) / {Number(piece.SoldShare)}", piece.Materials);
        yield return new("secondsCredit", "what its rejected pieces bring as seconds",
            piece.Design.Seconds is { } seconds ? $"{Number(seconds.Share)} * {Number(seconds.Price)} * (starts - 1) / {Number(piece.SoldShare)}" : "0", piece.SecondsCredit);
        yield return new("benchCost", "what its bench time must recover", "perBenchHour * benchHours", piece.BenchCost);
        yield return new("floor", "what one sold piece must bring in", "max(0, benchCost + materials - secondsCredit)", piece.Floor);
        yield return new("piecesPerYear", "pieces that the year's bench hours make", "benchHoursOfTheYear / benchHours", piece.PiecesPerYear);
    }

    public static IEnumerable<Working> Of(FloorPrice floor)
    {
        yield return new("wholesaleBase", "the larger of the floor rounded up and the highest price listed on a wholesale channel", Number(floor.WholesaleBase), floor.WholesaleBase);
        yield return new("target", "what a retail price before tax must reach", $"{Number(floor.Piece.Year.Profile.PriceRule.RetailMultiple)} * wholesaleBase", floor.Target);
    }

    public static IEnumerable<Working> Of(Sale sale, Channel channel)
    {
        var n = Number(channel.PiecesPerOrder);
        var tax = $"(1 + {Number(channel.SalesTax.Rate)})";
        yield return new("price", "the listed price", Number(sale.Price), sale.Price);
        yield return new("beforeTax", "the price before sales tax", channel.SalesTax.Included ? $"price / {tax}" : "price", sale.BeforeTax);
        yield return new("shippingCharged", "shipping charged an order, before tax",
            channel.SalesTax.Included ? $"{Number(channel.Shipping.Charged)} / {tax}" : Number(channel.Shipping.Charged), sale.ShippingCharged);
        yield return new("paid", "all that the buyer pays for an order", $"({n} * beforeTax + shippingCharged) * {tax}", sale.Paid);
        foreach (var (i, fee) in channel.Fees.Index())
            yield return new($"fee{i + 1}", $"fee {i + 1}{Named(fee.Name)} on an order", FeeFormula(fee, n), sale.Fees[i]);
        yield return new("fees", "all fees on an order", Sum(sale.Fees.Select((_, i) => $"fee{i + 1}")), sale.Fees.Sum());
        yield return new("perPieceCosts", "packing and the stall's share, a piece",
            Number(channel.CostPerPiece) + (channel.Stall is { } stall ? $" + {Number(stall.Cost)} / {Number(stall.Pieces)}" : ""), sale.PerPieceCosts);
        yield return new("keep", "kept of a sale that stays sold, a piece",
            $"beforeTax * (1 - {Number(channel.ShopShare)}) + (shippingCharged - {Number(channel.Shipping.Cost)} - fees) / {n} - perPieceCosts", sale.Keep);
        yield return new("lost", "lost on a sale that comes back, a piece",
            $"{(channel.Returns.FeesRefunded ? "0" : "fees")} / {n} + ({Number(channel.Shipping.Cost)} + {Number(channel.Shipping.ReturnCost)}) / {n} + perPieceCosts", sale.Lost);
        var q = Number(channel.Returns.Share);
        yield return new("revenueAPiece", "what buyers pay before sales tax and do not get back, a piece", $"beforeTax * (1 - {q}) / (1 - {q} * {Number(channel.Returns.ResaleShare)})", sale.Revenue);
        yield return new("net", "reaches the studio, a piece", $"((1 - {q}) * keep - {q} * lost) / (1 - {q} * {Number(channel.Returns.ResaleShare)})", sale.Net);
    }

    public static IEnumerable<Working> Of(PriceCheck check)
    {
        yield return new("aboveFloor", "above the floor; negative when short", "net - floor", check.AboveFloor);
        yield return new("earnedPerBenchHour", "what the price really pays for an hour at the bench", "(net - materials + secondsCredit) / benchHours", check.EarnedPerBenchHour);
        if (TakeHome.Of(check).Found is not { } takeHome)
            yield break;
        var year = check.Prices.Floor.Piece.Year;
        yield return new("profitAtThisPrice", "the year's profit before tax if every bench hour earned that", "earnedPerBenchHour * benchHoursOfTheYear - allocated + taxableIncome", takeHome.Profit);
        yield return new("taxedProfit", "the part of it that is taxed", "max(0, profitAtThisPrice)", takeHome.TaxedProfit);
        foreach (var line in Prefixed("atThisPrice", "at this price: ", OfLevies(year, takeHome.TaxedProfit, "taxedProfit")))
            yield return line;
        yield return new("takeHomePerHourAtThisPrice", "would reach the household for each working hour",
            $"(profitAtThisPrice - atThisPriceTax - notDeductible) / (workdays * {Number(year.Profile.Calendar.HoursPerDay)})", takeHome.PerHour);
    }

    /// <summary>After the workings of the check: each part of what the buyer pays.</summary>
    public static IEnumerable<Working> Of(PriceParts parts)
    {
        var channel = parts.Check.Prices.Terms.Channel;
        var n = Number(channel.PiecesPerOrder);
        var year = parts.Check.Prices.Floor.Piece.Year;
        string OfPool(string part) => year.Allocated + year.Profit > 0 ? $"forBenchTime * {part} / (allocated + profitBeforeTax)" : "0";
        yield return new("paidAPiece", "what the buyer pays a piece", $"paid / {n}", parts.Paid);
        yield return new("salesTaxPart", "of it, sales tax", $"(beforeTax + shippingCharged / {n}) * {Number(channel.SalesTax.Rate)}", parts[PricePart.SalesTax]);
        yield return new("shopPart", "of it, a shop or gallery keeps", $"beforeTax * {Number(channel.ShopShare)}", parts[PricePart.ShopShare]);
        yield return new("feesPart", "of it, fees", $"fees / {n}", parts[PricePart.Fees]);
        yield return new("shippingPart", "of it, shipping", $"{Number(channel.Shipping.Cost)} / {n}", parts[PricePart.Shipping]);
        yield return new("returnsPart", "of it, pieces that come back", "keep - net", parts[PricePart.Returns]);
        yield return new("forMaterials", "of it, materials less what seconds bring", "max(0, materials - secondsCredit)", parts.ForMaterials);
        yield return new("forBenchTime", "the rest of the floor, which bench time owes", "floor - forMaterials", parts.ForBenchTime);
        yield return new("expensesPart", "of that, expenses", OfPool("allocated"), parts[PricePart.Expenses]);
        yield return new("taxPart", "of that, tax on the profit", OfPool("tax"), parts[PricePart.Tax]);
        yield return new("householdPart", "of that, the household", "forBenchTime - expensesPart - taxPart", parts[PricePart.Household]);
    }

    public static IEnumerable<Working> Of(BreakEven breakEven)
    {
        yield return new("contribution", "what one sale leaves for the pool", "net - materials + secondsCredit", breakEven.Contribution);
        yield return new("exactUnits", "pieces that carry the pool, before rounding up", "benchMustEarn / contribution", breakEven.Pool / breakEven.Contribution);
        yield return new("units", "whole pieces that carry the pool", Number(breakEven.Units), breakEven.Units);
        yield return new("unitsHours", "bench hours that they take", "units * benchHours", breakEven.BenchHours);
        yield return new("revenue", "what buyers pay for them before sales tax and do not get back", "units * revenueAPiece", breakEven.Revenue);
        yield return new("shareOfYear", "their part of the year's bench hours", "unitsHours / benchHoursOfTheYear", breakEven.ShareOfYear);
    }

    public static IEnumerable<Working> Of(MixBreakEven mix)
    {
        foreach (var (i, line) in mix.Lines.Index())
            yield return new($"contribution{i + 1}", $"what one sale of line {i + 1} leaves for the pool",
                $"{Number(line.Sale.Net)} - {Number(line.Piece.Materials)} + {Number(line.Piece.SecondsCredit)}", line.Contribution);
        yield return new("benchMustEarnWithSurplus", "what bench time must recover, a wanted surplus included", Number(mix.Pool), mix.Pool);
        yield return new("contributionPerMixUnit", "what one unit of the mix leaves for the pool", Sum(mix.Lines.Select((line, i) => $"{Number(line.Ratio)} * contribution{i + 1}")), mix.ContributionPerMixUnit);
        yield return new("mixUnits", "units of the mix that carry the pool", "benchMustEarnWithSurplus / contributionPerMixUnit", mix.MixUnits);
        foreach (var (i, line) in mix.Lines.Index())
            yield return new($"exactUnits{i + 1}", $"pieces of line {i + 1}, before rounding to {Number(mix.Units[i])}", $"{Number(line.Ratio)} * mixUnits", line.Ratio * mix.MixUnits);
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

    private static string HoursFormula(Making making, StudioCalendar calendar)
    {
        var minutes = making switch
        {
            { PiecesPerDay: { } pieces } => $"starts * 60 * {Number(calendar.HoursPerDay)} * {Number(calendar.BenchShare)} / {Number(pieces)}",
            { PiecesPerBenchDay: { } pieces } => $"starts * 60 * {Number(calendar.HoursPerDay)} / {Number(pieces)}",
            { MinutesPerPiece: { } each } => $"starts * {Number(each)}",
            _ => Sum((making.Steps ?? []).Select((step, i) => $"entering{i + 1} * {Number(step.HandsOnMinutes)} / {Number(step.BatchSize)}")),
        };
        return $"({minutes} + starts * {Number(making.SetupMinutes)} / {Number(making.RunSize ?? 1)}) / 60";
    }

    private static string CostFormula(MaterialLine line, StudioYear year) => line.Material is { } material
        ? $"{Number(year.PriceOf(material) ?? 0)} * {Number(line.Quantity ?? 0)} / (1 - {Number(line.WasteShare)}) / {Number(line.BatchSize)}"
        : Number(line.Amount ?? 0);

    private static string AtFormula(string at, Making making) => at switch
    {
        "start" => "starts",
        "finish" => "1",
        _ => $"entering{(making.Steps ?? []).Index().First(step => step.Item.Name == at).Index + 1}",
    };

    private static string FeeFormula(Fee fee, string n)
    {
        var of = fee.Of switch { FeeBase.Price => $"{n} * beforeTax", FeeBase.PriceAndShipping => $"({n} * beforeTax + shippingCharged)", _ => "paid" };
        var raw = $"{Number(fee.Rate)} * {of} + {Number(fee.Fixed)}";
        if (fee.Minimum is { } minimum) raw = $"max({Number(minimum)}, {raw})";
        return fee.Maximum is { } maximum ? $"min({Number(maximum)}, {raw})" : raw;
    }

    private static string SumOf(IEnumerable<IRecurring> lines) => Sum(lines.Select(Yearly));

    private static string Yearly(IRecurring line) => $"{Number(line.Amount)} * {Number(line.TimesAYear())}";

    private static string Sum(IEnumerable<string> parts) => string.Join(" + ", parts) is { Length: > 0 } sum ? sum : "0";

    private static string Named(string? name) => name is null ? "" : $" ({name})";

    private static string Number(decimal value) => Rounding.Trim(value).ToString(CultureInfo.InvariantCulture);
}
