using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Planning;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
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

    private static string FeeFormula(Fee fee, string n)
    {
        var of = fee.Of switch { FeeBase.Price => $"{n} * beforeTax", FeeBase.PriceAndShipping => $"({n} * beforeTax + shippingCharged)", _ => "paid" };
        var raw = $"{Number(fee.Rate)} * {of} + {Number(fee.Fixed)}";
        if (fee.Minimum is { } minimum) raw = $"max({Number(minimum)}, {raw})";
        return fee.Maximum is { } maximum ? $"min({Number(maximum)}, {raw})" : raw;
    }
}
