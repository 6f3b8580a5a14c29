using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// Work made for one order: its runs, the hours besides, what is bought for it, and the total that carries all of it on a channel. Unrounded
/// but where it says so. A run that must bring in 84.60 alone, sold with a card fee of 2.9 % + 0.30 and 2.00 of packing and postage: 89.65.
/// </summary>
public sealed class MadeToOrder
{
    private readonly MadeToOrderFormulas<Figure> _formulas;

    private MadeToOrder(StudioYear year, Channel channel, IReadOnlyList<Run> runs, ExtraWork extra)
    {
        (Year, Channel, Runs, Extra) = (year, channel, runs, extra);
        _formulas = FormulasOf<Figure>();
    }

    public StudioYear Year { get; }

    public Channel Channel { get; }

    public IReadOnlyList<Run> Runs { get; }

    public ExtraWork Extra { get; }

    /// <summary>n: all pieces of the runs; 0 for work alone, such as a repair.</summary>
    public int Pieces => (int)_formulas.Pieces.Value;

    /// <summary>Hours of selling the order takes on the channel.</summary>
    public decimal SellingHours => _formulas.SellingHours.Value;

    /// <summary>All hours: bench, extra and selling.</summary>
    public decimal Hours => _formulas.Hours.Value;

    /// <summary>Materials of all runs.</summary>
    public decimal Materials => _formulas.Materials.Value;

    /// <summary>What the rejected pieces of all runs bring as seconds.</summary>
    public decimal Seconds => _formulas.Seconds.Value;

    /// <summary>What is bought for the order.</summary>
    public decimal Bought => _formulas.Bought.Value;

    /// <summary>F_order: what must reach the studio.</summary>
    public decimal Floor => _formulas.Floor.Value;

    /// <summary>The smallest total on the currency's minor unit, as the channel's prices are, whose net reaches the floor.</summary>
    public decimal FloorTotal { get; private init; }

    /// <summary>The total one minor unit below the floor total; null if that would be nothing.</summary>
    public decimal? OneUnitLower => FloorTotal > Year.Currency.MinorUnit ? FloorTotal - Year.Currency.MinorUnit : null;

    /// <summary>The floor total over the pieces; the floor total itself for work alone.</summary>
    public decimal PerPiece => FloorTotal / int.Max(1, Pieces);

    /// <summary>What is paid out for the order before its fees, which come off what is paid.</summary>
    public decimal OutOfPocket => _formulas.OutOfPocket.Value;

    /// <summary>The least deposit: what is paid out, rounded up to the minor unit.</summary>
    public decimal LeastDeposit => Year.Currency.RoundUp(OutOfPocket);

    /// <summary>
    /// The work of one year on a channel whose terms are valid. Refused: two currencies (<c>currency-mismatch</c>), no total up to 10^12
    /// (<c>no-price</c>), no hours at all (<c>no-bench-time</c>), figures past exactness (<c>too-large</c>).
    /// </summary>
    /// <param name="year">The year that pays for the hours.</param>
    /// <param name="channel">A channel that <see cref="SellingTerms"/> accept.</param>
    /// <param name="runs">Runs of designs of that year; none for work alone.</param>
    /// <param name="extra">What it takes besides.</param>
    public static Outcome<MadeToOrder> Of(StudioYear year, Channel channel, IReadOnlyList<Run> runs, ExtraWork extra) =>
        Outcome<MadeToOrder>.Guard(() =>
        {
            if (channel.Currency != year.Currency.Code)
                return new Fault("", FaultCodes.CurrencyMismatch,
                    $"The channel sells in {channel.Currency} and the profile counts in {year.Currency.Code}; nothing is ever converted.");
            var order = new MadeToOrder(year, channel, runs, extra);
            if (order.Hours <= 0)
                return new Fault("", FaultCodes.NoBenchTime, "The order takes no time, so it could carry no part of the year; give lines or hours.");
            var total = order.LeastTotal();
            return total.Found is null ? total.Faults.ToList() : new MadeToOrder(year, channel, runs, extra) { FloorTotal = total.Value.Price };
        });

    /// <summary>
    /// What of a total, as the channel's prices are, reaches the studio; nothing comes back or is lost, because it is made for its buyer.
    /// </summary>
    public decimal NetOf(decimal total) => _formulas.SoldFor(total, Channel).Net.Net.Value;

    /// <summary>Whether a total reaches the floor.</summary>
    public bool CarriesItsShare(decimal total) => NetOf(total).Reaches(Floor);

    /// <summary>What a total pays for an hour of the order.</summary>
    public decimal EarnedPerHour(decimal total) => _formulas.EarnedPerHour(NetOf(total)).Value;

    /// <summary>A total with a surcharge for haste, rounded up; it never makes a price below the floor a good one.</summary>
    public decimal RushTotal(decimal total, decimal share) => MadeToOrderFormulas<Figure>.RushTotal(total, share, Year.Currency).Value;

    internal MadeToOrderFormulas<T> FormulasOf<T>() where T : IFigure<T> => new(Year, Channel, Runs, Extra);

    private Outcome<FoundPrice> LeastTotal()
    {
        var lasting = Channel with { Returns = new Returns(), LossShare = 0 };
        var terms = OrderTerms.Of(lasting, Pieces, Channel.Shipping.Charged);
        return terms.Found is null
            ? terms.Faults.ToList()
            : OrderTerms.LeastTotal(Channel, Sale.ListedOf(terms.Value.LeastValue(Floor), Channel), CarriesItsShare);
    }
}
