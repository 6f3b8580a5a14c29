using System.Globalization;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>
    /// Of each design its least order and one piece fewer, which falls short; of one that never carries its share, the most pieces looked at. Then
    /// the threshold.
    /// </summary>
    /// <param name="orders">The channel and its offer.</param>
    /// <param name="designs">What was found.</param>
    public static IEnumerable<Working> Of(LeastOrders orders, IReadOnlyList<LeastOrderOfDesign> designs)
    {
        var threshold = new List<WrittenFigure>();
        foreach (var (i, design) in designs.Index())
        {
            var symbol = string.Create(CultureInfo.InvariantCulture, $"design{i + 1}");
            var (pieces, never) = (design.Least.Pieces ?? LeastOrder.MostPieces, design.Least.Pieces is null);
            var (at, words) = never ? ("MostPieces", $"{pieces} pieces of {design.Key}") : ("LeastOrder", $"the least order of {design.Key}");
            foreach (var line in Prefixed(symbol + at, words + ": ", Of(orders, design, pieces)))
                yield return line;
            if (never || pieces == 1)
                continue;
            foreach (var line in Prefixed(symbol + "OneFewer", $"one piece of {design.Key} fewer: ", Of(orders, design, pieces - 1)))
                yield return line;
            threshold.Add(WrittenFigure.Named(symbol + "LeastOrderOrderTotal", design.Least.Total!.Value));
        }

        if (threshold.Count > 0)
            yield return Line(LeastOrders.ThresholdOf(threshold),
                "from this total on every order of one design carries its share, except of those that never do");
    }

    private static IEnumerable<Working> Of(LeastOrders orders, LeastOrderOfDesign design, int pieces)
    {
        var item = new OrderItem(design.Piece, pieces, design.Price);
        var formulas = orders.FormulasOf<WrittenFigure>(item);
        if (formulas.SellingHours.Value > 0)
            yield return Line(formulas.PerBenchHour, "what an hour at the bench must recover; the workings of its profile's year say how");
        foreach (var line in OfCharged([item], orders.Offer, formulas).Concat(OfNet(formulas.Net, orders.Channel))
            .Concat(OfFloors([item], [], formulas)))
            yield return line;
    }
}
