using System.Globalization;
using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="MadeToOrder"/>.</summary>
internal readonly struct MadeToOrderFormulas<T> where T : IFigure<T>
{
    public MadeToOrderFormulas(StudioYear year, Channel channel, IReadOnlyList<Run> runs, ExtraWork extra)
    {
        var pieces = 0;
        for (var i = 0; i < runs.Count; i++)
            pieces += runs[i].Quantity;
        Pieces = T.Named("orderPieces", pieces);
        HasExtraHours = extra.Hours.Count > 0 || extra.RevisionsIncluded > 0;
        ExtraHours = HasExtraHours ? T.Named("extraHours", ExtraHoursOf(extra)) : 0;
        SellingHours = OrderNetFormulas<T>.SellingHoursOf(channel, Pieces);
        var made = Sum(runs, "RunHours", run => run.BenchHours);
        var hours = HasExtraHours ? made + ExtraHours : made;
        Hours = T.Named("orderHours", SellingHours.Value > 0 ? hours + SellingHours : hours);
        Materials = T.Named("orderMaterials", Sum(runs, "RunMaterials", run => run.Materials));
        Seconds = T.Named("orderSeconds", Sum(runs, "RunSeconds", run => run.Seconds));
        Bought = T.Named("bought", Formulas.Sum(extra.Bought, _ => true, (one, _) => one.Rate == 1 ? (T)one.Amount : (T)one.Amount * one.Rate));
        Floor = T.Named("orderFloor",
            T.Max(0, T.Named("perBenchHour", year.PerBenchHour) * Hours + Materials - Seconds + Bought));
        T packing = channel.CostPerPiece;
        OutOfPocket = T.Named("outOfPocket", Materials + Bought + channel.Shipping.Cost
            + Pieces * (channel.Stall is { } stall ? packing + (T)stall.Cost / stall.Pieces : packing));
    }

    public T Pieces { get; }

    public bool HasExtraHours { get; }

    /// <summary>0 without a symbol if there are none.</summary>
    public T ExtraHours { get; }

    public T SellingHours { get; }

    public T Hours { get; }

    public T Materials { get; }

    public T Seconds { get; }

    public T Bought { get; }

    public T Floor { get; }

    public T OutOfPocket { get; }

    /// <summary>The order sold for a total as listed: nothing of it comes back or is lost, because it is made for its buyer.</summary>
    public (T Total, T Value, T ShippingCharged, OrderNetFormulas<T> Net) SoldFor(decimal total, Channel channel)
    {
        var listed = T.Named("orderTotal", total);
        var (_, value, shipping) = OrderFormulas<T>.Charged(listed, channel, new Offer());
        return (listed, value, shipping, new OrderNetFormulas<T>(channel with { Returns = new Returns(), LossShare = 0 }, Pieces, value, shipping));
    }

    /// <summary>What the order pays for an hour of it if so much reaches the studio; without a symbol.</summary>
    public T EarnedPerHour(T net) => (net - Materials + Seconds - Bought) / Hours;

    /// <summary>What is left above the floor if so much reaches the studio.</summary>
    public T AboveFloor(T net) => T.Named("aboveFloor", net - Floor);

    /// <summary>A total with a surcharge for haste, rounded up to the minor unit.</summary>
    public static T RushTotal(T total, decimal share, Currency currency) =>
        T.Named("rushTotal", T.RoundUp(total * (1 + (T)share), currency.Decimals));

    private static T ExtraHoursOf(ExtraWork extra)
    {
        var hours = Formulas.Sum(extra.Hours, _ => true, (one, _) => (T)one);
        return extra.RevisionsIncluded > 0 ? hours + (T)extra.RevisionsIncluded * extra.RevisionHours : hours;
    }

    /// <summary>A figure of every run added up, each by the symbol that its workings have behind the number of its line.</summary>
    private static T Sum(IReadOnlyList<Run> runs, string symbol, Func<Run, decimal> figure) => Formulas.Sum(runs, _ => true, (run, i) =>
        T.IsWritten ? T.Named(string.Create(CultureInfo.InvariantCulture, $"line{i + 1}{symbol}"), figure(run)) : (T)figure(run));
}
