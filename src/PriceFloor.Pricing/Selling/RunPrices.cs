using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>What runs of one design must sell for on one channel, at several quantities.</summary>
public sealed class RunPrices
{
    private RunPrices(IReadOnlyList<RunPrice> items) => Items = items;

    /// <summary>In the order of the quantities asked for.</summary>
    public IReadOnlyList<RunPrice> Items { get; }

    /// <summary>Refused as <see cref="Run.Of"/> and <see cref="MadeToOrder.Of"/> refuse.</summary>
    /// <param name="piece">A piece of the design.</param>
    /// <param name="terms">The channel.</param>
    /// <param name="quantities">Each 1 or more.</param>
    /// <param name="sure">The chance with which enough pieces must come out good; null: as many are started as are lost on average.</param>
    public static Outcome<RunPrices> Of(UnitCost piece, SellingTerms terms, IReadOnlyList<int> quantities, decimal? sure) =>
        Outcome<RunPrices>.Guard(() =>
        {
            var orders = new Dictionary<int, MadeToOrder>();
            foreach (var quantity in quantities.Concat(quantities.Select(n => n - 1)).Append(1).Where(n => n > 0).Distinct())
            {
                var order = OrderOf(piece, terms, new RunTerms(quantity) { Sure = sure });
                if (order.Found is null)
                    return order.Faults.ToList();
                orders.Add(quantity, order.Value);
            }

            return new RunPrices([.. quantities.Select(n => PriceOf(orders[n], orders[1], orders.GetValueOrDefault(n - 1)))]);
        });

    private static Outcome<MadeToOrder> OrderOf(UnitCost piece, SellingTerms terms, RunTerms run)
    {
        var made = Run.Of(piece, run);
        return made.Found is null ? made.Faults.ToList() : MadeToOrder.Of(piece.Year, terms.Channel, [made.Value], ExtraWork.None);
    }

    private static RunPrice PriceOf(MadeToOrder order, MadeToOrder one, MadeToOrder? oneFewer)
    {
        var savesALoad = oneFewer is not null && oneFewer.Runs[0].Loads < order.Runs[0].Loads
            && Rounding.Settle(oneFewer.Floor / oneFewer.Pieces) < Rounding.Settle(order.Floor / order.Pieces);
        return new RunPrice(order, one.FloorTotal, savesALoad ? oneFewer!.Pieces : null);
    }
}
