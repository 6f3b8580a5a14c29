using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="PriceCheck"/>.</summary>
internal readonly struct CheckFormulas<T> where T : IFigure<T>
{
    public CheckFormulas(ChannelPrices prices, Sale sale)
    {
        var piece = prices.Floor.UnitCost;
        var onChannel = new ChannelFloorFormulas<T>(piece, prices.Terms.Channel);
        AboveFloor = T.Named("aboveFloor", T.Named("net", sale.Net) - onChannel.Floor);
        EarnedPerBenchHour = T.Named("earnedPerBenchHour", LeftOf(sale, piece) / onChannel.Hours);
    }

    public T AboveFloor { get; }

    public T EarnedPerBenchHour { get; }

    /// <summary>net(p) - M + C: what one sale leaves toward what bench time must recover; without a symbol.</summary>
    public static T LeftOf(Sale sale, UnitCost piece) =>
        LeftOf(T.Named("net", sale.Net), T.Named("materials", piece.Materials), T.Named("secondsCredit", piece.SecondsCredit));

    /// <summary>The same, of figures that have symbols of their own.</summary>
    public static T LeftOf(T net, T materials, T secondsCredit) => net - materials + secondsCredit;
}
