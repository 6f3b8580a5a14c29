using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The floor and target price of one piece on one channel. Both lie on the channel's price grid.</summary>
public sealed class ChannelPrices
{
    private ChannelPrices(FloorPrice floor, SellingTerms terms, ChannelFloor channelFloor, decimal floorPrice, decimal? reachingTarget) =>
        (Floor, Terms, ChannelFloor, FloorPrice, ReachingTarget, TargetPrice) =
        (floor, terms, channelFloor, floorPrice, reachingTarget, new ChannelPricesFormulas<Figure>(floorPrice, reachingTarget).TargetPrice.Value);

    public FloorPrice Floor { get; }

    public SellingTerms Terms { get; }

    /// <summary>What a piece must bring in on this channel.</summary>
    public ChannelFloor ChannelFloor { get; }

    /// <summary>The smallest allowed price whose net reaches the floor on the channel.</summary>
    public decimal FloorPrice { get; }

    /// <summary>
    /// On a retail channel the smallest allowed price that reaches the retail multiple of wholesale before tax; null on a wholesale channel.
    /// </summary>
    public decimal? ReachingTarget { get; }

    /// <summary>On a retail channel at least the retail multiple of wholesale before tax; else the floor price.</summary>
    public decimal TargetPrice { get; }

    /// <summary>Refused: two currencies (<c>currency-mismatch</c>), no price up to 10^12 (<c>no-price</c>).</summary>
    public static Outcome<ChannelPrices> Of(FloorPrice floor, SellingTerms terms)
    {
        var currency = floor.UnitCost.Year.Currency.Code;
        if (terms.Channel.Currency != currency)
            return new Fault("", FaultCodes.CurrencyMismatch,
                $"The channel sells in {terms.Channel.Currency} and the profile counts in {currency}; nothing is ever converted.");

        return Outcome<ChannelPrices>.Guard(() => OnOneCurrency(floor, terms));
    }

    /// <summary>
    /// The verdict of a price above zero, without the rest. A price that the grid allows needs no calculation: the net rises with every price, so
    /// it reaches the floor from the floor price on and the target from the target price on.
    /// </summary>
    public Verdict VerdictOf(decimal price) =>
        !Terms.Grid.Allows(price) ? VerdictOf(Sale.Of(price, Terms.Channel))
        : price < FloorPrice ? Verdict.BelowFloor
        : price < TargetPrice ? Verdict.BelowTarget
        : Verdict.MeetsTarget;

    /// <summary>What a price above zero is short of the floor on the channel; 0 if it carries its share.</summary>
    public decimal ShortBy(decimal price) =>
        VerdictOf(price) == Verdict.BelowFloor ? decimal.Max(0, ChannelFloor.Floor - Sale.Of(price, Terms.Channel).Net) : 0;

    internal Verdict VerdictOf(Sale sale) => !sale.Net.Reaches(ChannelFloor.Floor) ? Verdict.BelowFloor
        : Terms.Channel.Sells == Sells.Retail && !sale.BeforeTax.Reaches(Floor.Target) ? Verdict.BelowTarget
        : Verdict.MeetsTarget;

    /// <summary>What a listed price above zero does, on the grid or not.</summary>
    public Outcome<PriceCheck> Check(decimal price) => Outcome<PriceCheck>.Guard(() => new PriceCheck(this, price));

    private static Outcome<ChannelPrices> OnOneCurrency(FloorPrice floor, SellingTerms terms)
    {
        var channelFloor = new ChannelFloor(floor.UnitCost, terms.Channel);
        var least = terms.FloorPrice(channelFloor.Floor);
        if (least.Found is null)
            return least.Faults.ToList();
        if (terms.Channel.Sells == Sells.Wholesale)
            return new ChannelPrices(floor, terms, channelFloor, least.Value.Price, null);

        var target = terms.PriceReaching(floor.Target);
        return target.Found is null
            ? target.Faults.ToList()
            : new ChannelPrices(floor, terms, channelFloor, least.Value.Price, target.Value.Price);
    }
}
