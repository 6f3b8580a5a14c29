using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(FloorPrice floor)
    {
        var formulas = new FloorPriceFormulas<WrittenFigure>(floor.UnitCost, floor.HighestWholesale);
        yield return Line(formulas.Wholesale, "the wholesale price: the floor rounded up");
        yield return Line(formulas.WholesaleBase, "the larger of the floor rounded up and the highest price listed on a wholesale channel");
        yield return Line(formulas.Target, "what a retail price before tax must reach");
        yield return Line(formulas.Retail, "the retail price that goes with the wholesale price");
    }

    public static IEnumerable<Working> Of(Sale sale)
    {
        var formulas = new SaleFormulas<WrittenFigure>(sale.Price, sale.Channel);
        yield return Line(formulas.Price, "the listed price");
        yield return Line(formulas.BeforeTax, "the price before sales tax");
        if (sale.Channel.UsualDiscount > 0)
            yield return Line(formulas.AfterDiscount, "what is paid of it on average, the usual discount taken off");
        yield return Line(formulas.ShippingCharged, "shipping charged an order, before tax");
        yield return Line(formulas.Paid, "all that the buyer pays for an order");
        foreach (var (i, fee) in sale.Channel.Fees.Index())
            yield return Line(formulas.Fees[i], $"fee {i + 1}{Named(fee.Name)} on an order");
        yield return Line(formulas.AllFees, "all fees on an order");
        yield return Line(formulas.PerPieceCosts, "packing and the stall's share, a piece");
        yield return Line(formulas.Keep, "kept of a sale that stays sold, a piece");
        yield return Line(formulas.Lost, "lost on a sale that comes back, a piece");
        yield return Line(formulas.Revenue, "what buyers pay before sales tax and do not get back, a piece");
        if (sale.Channel.LossShare > 0)
            yield return Line(formulas.BeforeLosses, "would reach the studio, a piece, if none were lost on the channel");
        yield return Line(formulas.Net, "reaches the studio, a piece");
    }

    /// <summary>After the workings of the channel's prices, which have the floor on the channel, and of the sale.</summary>
    public static IEnumerable<Working> Of(PriceCheck check)
    {
        var formulas = new CheckFormulas<WrittenFigure>(check.Prices, check.Sale);
        yield return Line(formulas.AboveFloor, "above the floor; negative when short");
        yield return Line(formulas.EarnedPerBenchHour, "what the price really pays for an hour of the piece");
        foreach (var line in OfTakeHome(check).Concat(OfDiscountRoom(check)))
            yield return line;
    }

    /// <summary>
    /// After the workings of the floor: the sale at the floor price and one step lower, and what the target price comes to before tax.
    /// </summary>
    public static IEnumerable<Working> Of(ChannelPrices prices)
    {
        var (channel, grid) = (prices.Terms.Channel, prices.Terms.Grid);
        foreach (var line in OfChannelFloor(prices))
            yield return line;
        foreach (var line in Prefixed("atFloorPrice", "at the floor price: ", Of(Sale.Of(prices.FloorPrice, channel))))
            yield return line;
        var lower = grid.Below(prices.FloorPrice);
        if (lower is { } price)
            foreach (var line in Prefixed("oneStepLower", "one step lower: ", Of(Sale.Of(price, channel))))
                yield return line;
        var formulas = new ChannelPricesFormulas<WrittenFigure>(prices.FloorPrice, prices.ReachingTarget);
        var least = lower is null ? "and there is none lower" : "that of one step lower does not";
        yield return Line(formulas.FloorPrice, $"the floor price: its net reaches the floor, {least}");
        if (prices.ReachingTarget is { } target)
            foreach (var line in OfTarget(target, grid.Below(target), channel.SalesTax))
                yield return line;
        yield return Line(formulas.TargetPrice,
            prices.ReachingTarget is null ? "the target price: on a wholesale channel the floor price" : "the target price: the larger of the two");
    }

    /// <summary>What selling there adds to the floor; nothing on a channel that takes no selling hours.</summary>
    private static IEnumerable<Working> OfChannelFloor(ChannelPrices prices)
    {
        var formulas = new ChannelFloorFormulas<WrittenFigure>(prices.Floor.UnitCost, prices.Terms.Channel);
        if (!formulas.HasSellingHours)
            yield break;
        yield return Line(formulas.SellingHours, "hours of selling a piece");
        yield return Line(formulas.Hours, "hours of making and selling a piece");
        yield return Line(formulas.Floor, "what one sold piece must bring in on the channel");
    }

    private static IEnumerable<Working> OfTarget(decimal target, decimal? below, SalesTax tax)
    {
        var (listed, beforeTax) = ChannelPricesFormulas<WrittenFigure>.BeforeTax("reachingTarget", "reachingTargetBeforeTax", target, tax);
        yield return Line(listed, "the smallest allowed price that reaches the target before tax");
        yield return Line(beforeTax, "that price before tax");
        if (below is not { } price)
            yield break;
        var lower = ChannelPricesFormulas<WrittenFigure>.BeforeTax("belowTarget", "belowTargetBeforeTax", price, tax);
        yield return Line(lower.Listed, "the allowed price one step lower");
        yield return Line(lower.BeforeTax, "that price before tax: it does not reach the target");
    }

    /// <summary>The sale with the most taken off: its net still reaches the floor.</summary>
    private static IEnumerable<Working> OfDiscountRoom(PriceCheck check)
    {
        if (check.DiscountRoom is not { } room)
            yield break;
        yield return Line(WrittenFigure.Named("mostOff", room.Share),
            "the most that may be taken off the price, in thousandths: its sale still reaches the floor");
        foreach (var line in Prefixed("atMostOff", "with that taken off: ", Of(room.Sale)))
            yield return line;
    }

    private static IEnumerable<Working> OfTakeHome(PriceCheck check)
    {
        if (TakeHome.Of(check).Found is null)
            yield break;
        var year = check.Prices.Floor.UnitCost.Year;
        var formulas = new TakeHomeFormulas<WrittenFigure>(check.EarnedPerBenchHour, year);
        yield return Line(formulas.Profit, "the year's profit before tax if every carrying hour earned that");
        yield return Line(formulas.TaxedProfit, "the part of it that is taxed");
        foreach (var line in Prefixed("atThisPrice", "at this price: ", OfTax(formulas.Tax, year.TaxRules.Levies)))
            yield return line;
        yield return Line(formulas.PerHour, "would reach the household for each working hour");
    }

    /// <summary>After the workings of the check: each part of what the buyer pays.</summary>
    public static IEnumerable<Working> Of(PriceParts parts)
    {
        var (channel, piece) = (parts.Check.Prices.Terms.Channel, parts.Check.Prices.Floor.UnitCost);
        var formulas = new PartsFormulas<WrittenFigure>(parts.Check);
        if (channel.UsualDiscount > 0)
            yield return Line(formulas.Discount, "what the usual discount takes off, with its tax");
        yield return Line(formulas.Paid, channel.UsualDiscount > 0 ? "what the buyer would pay a piece without it" : "what the buyer pays a piece");
        yield return Line(formulas.SalesTax, "of it, sales tax");
        yield return Line(formulas.ShopShare, "of it, a shop or gallery keeps");
        yield return Line(formulas.Fees, "of it, fees");
        yield return Line(formulas.Shipping, "of it, shipping");
        yield return Line(formulas.Returns, "of it, pieces that come back");
        if (channel.LossShare > 0)
            yield return Line(formulas.Losses, "of it, pieces lost on the channel");
        yield return Line(formulas.ForMaterials, "of it, materials less what seconds bring");
        if (piece.DevelopmentCost > 0)
        {
            yield return Line(formulas.Development, "of that, one-off cost of the design");
            yield return Line(formulas.Materials, "of that, the materials themselves");
        }

        yield return Line(formulas.ForBenchTime, "the rest of the floor, which bench time owes");
        yield return Line(formulas.Expenses, "of that, expenses");
        yield return Line(formulas.Tax, "of that, tax on the profit");
        yield return Line(formulas.Household, "of that, the household");
    }
}
