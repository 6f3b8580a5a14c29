using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// A channel whose net is known to rise with every price, so that it has a lowest price for every floor. The net is piecewise linear
/// in what is paid before tax, with a corner wherever a fee leaves its minimum or reaches its maximum.
/// </summary>
public sealed class SellingTerms
{
    private readonly List<Stretch> _stretches;

    private SellingTerms(Channel channel, List<Stretch> stretches) =>
        (Channel, Grid, _stretches) = (channel, PriceGrid.Of(channel), stretches);

    public Channel Channel { get; }

    public PriceGrid Grid { get; }

    /// <summary>Refused with <c>takes-everything</c> if somewhere a higher price would leave no more.</summary>
    public static Outcome<SellingTerms> Of(Channel channel) => Outcome<SellingTerms>.Guard(() =>
        TakesEverything(channel) is { } fault ? fault : new SellingTerms(channel, [.. StretchesOf(channel)]));

    /// <summary>Whether a piece takes any time to sell there.</summary>
    public static bool TakesTime(Channel channel) =>
        channel.Selling.MinutesPerOrder > 0 || channel.Selling.MinutesPerPiece > 0 || channel.Stall is { Hours: > 0 };

    /// <summary>
    /// What is wrong with the rates alone: it reads shopShare, fees, salesTax, shipping charged, piecesPerOrder
    /// and returns, and for no other field.
    /// </summary>
    public static IReadOnlyList<Fault> RateFaults(Channel channel) =>
        Outcome<Channel>.Guard(() => TakesEverything(channel) is { } fault ? fault : channel).Faults;

    /// <summary>The smallest allowed price whose net reaches the floor. <c>no-price</c> if it would pass 10^12.</summary>
    public Outcome<FoundPrice> FloorPrice(decimal floor) => Outcome<FoundPrice>.Guard(() =>
        Found(Sale.ListedBeforeDiscount(LeastAfterDiscount(floor), Channel), price => Sale.Of(price, Channel).Net.Reaches(floor)));

    /// <summary>V: the price that leaves so much, on the grid or not; unrounded, and at least 0.</summary>
    public decimal PriceLeaving(decimal net) => Sale.ListedBeforeDiscount(LeastAfterDiscount(net), Channel);

    /// <summary>The smallest allowed price that reaches <paramref name="least"/> before tax.</summary>
    public Outcome<FoundPrice> PriceReaching(decimal least) => Outcome<FoundPrice>.Guard(() =>
        Found(Sale.ListedOf(least, Channel), price => Sale.BeforeTaxOf(price, Channel).Reaches(least)));

    /// <summary>What is paid before tax where a fee leaves its minimum or reaches its maximum, and zero; in order.</summary>
    internal IReadOnlyList<decimal> Corners => [.. _stretches.Select(stretch => stretch.From)];

    /// <summary>About what must be paid before tax for the net to reach the floor, exact but for the last digits.</summary>
    internal decimal LeastAfterDiscount(decimal floor)
    {
        var stretch = _stretches.FindLast(stretch => stretch.NetAtStart < floor) ?? _stretches[0];
        return decimal.Max(0, stretch.From + (floor - stretch.NetAtStart) / stretch.NetOfOneMore);
    }

    private Outcome<FoundPrice> Found(decimal near, Func<decimal, bool> isEnough) =>
        near <= Limits.HighestPrice && Grid.First(near, isEnough) is { } price
            ? new FoundPrice(price)
            : new Fault("", FaultCodes.NoPrice,
                "No price up to 10^12 would be enough on this channel; check its fees and the design's bench time and materials.");

    /// <summary>A stretch of what is paid before tax over which the net is a straight line.</summary>
    private sealed record Stretch(decimal From, decimal NetAtStart, decimal NetOfOneMore);

    private static Fault? TakesEverything(Channel channel)
    {
        var corners = CornersOf(channel);
        var flat = corners.FindIndex(from => !(Rounding.Settle(NetOfOneMore(channel, corners, from)) > 0));
        return flat < 0 ? null : new Fault(channel.ShopShare >= RatesOf(channel) ? "/shopShare" : "/fees", FaultCodes.TakesEverything,
            $"From a price before tax of {Rounding.Nearest(corners[flat] / (1 - channel.UsualDiscount), 2)} on, shop, "
            + "fees and returns together take all of each further "
            + "unit, so no price could ever reach a floor; lower shopShare, the fees' rates or returns.share.");
    }

    private static IEnumerable<Stretch> StretchesOf(Channel channel)
    {
        var corners = CornersOf(channel);
        var paidFor = 1 - channel.LossShare;
        return corners.Select(from =>
            new Stretch(from, Sale.AfterDiscountAt(from, channel).Net, paidFor * NetOfOneMore(channel, corners, from)));
    }

    private static List<decimal> CornersOf(Channel channel) =>
        [.. channel.Fees.SelectMany(fee => CornersOf(fee, channel)).Where(corner => corner > 0).Prepend(0).Distinct().Order()];

    /// <summary>What one more unit leaves on the stretch that begins at a corner, if no piece is lost on the channel.</summary>
    private static decimal NetOfOneMore(Channel channel, List<decimal> corners, decimal from)
    {
        var next = corners.IndexOf(from) + 1;
        return NetOfOneMore(channel, next < corners.Count ? (from + corners[next]) / 2 : from + 1);
    }

    private static IEnumerable<decimal> CornersOf(Fee fee, Channel channel)
    {
        var (perUnit, atZero) = FeeLine(fee, channel);
        if (perUnit == 0)
            yield break;
        if (fee.Minimum is { } minimum)
            yield return (minimum - atZero) / perUnit;
        if (fee.Maximum is { } maximum)
            yield return (maximum - atZero) / perUnit;
    }

    private static decimal NetOfOneMore(Channel channel, decimal beforeTax)
    {
        var fees = channel.Fees.Sum(fee =>
        {
            var (perUnit, atZero) = FeeLine(fee, channel);
            var raw = atZero + perUnit * beforeTax;
            return raw < (fee.Minimum ?? raw) || raw > (fee.Maximum ?? raw) ? 0 : perUnit;
        }) / channel.PiecesPerOrder;
        var q = channel.Returns.Share;
        var lost = channel.Returns.FeesRefunded ? 0 : fees;
        return ((1 - q) * (1 - channel.ShopShare - fees) - q * lost) / (1 - q * channel.Returns.ResaleShare);
    }

    /// <summary>A fee before its bounds as a line in what is paid before tax: what one more unit adds, and what it is at zero.</summary>
    private static (decimal PerUnit, decimal AtZero) FeeLine(Fee fee, Channel channel)
    {
        var tax = 1 + channel.SalesTax.Rate;
        var shipping = channel.SalesTax.Included ? channel.Shipping.Charged / tax : channel.Shipping.Charged;
        return fee.Of switch
        {
            FeeBase.Price => (fee.Rate * channel.PiecesPerOrder, fee.Fixed),
            FeeBase.PriceAndShipping => (fee.Rate * channel.PiecesPerOrder, fee.Rate * shipping + fee.Fixed),
            _ => (fee.Rate * channel.PiecesPerOrder * tax, fee.Rate * shipping * tax + fee.Fixed),
        };
    }

    private static decimal RatesOf(Channel channel) => channel.Fees.Sum(fee => fee.Rate);
}

/// <summary>A price on a channel's grid.</summary>
public sealed record FoundPrice(decimal Price);
