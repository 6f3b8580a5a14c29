using System.Runtime.InteropServices;
using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Orders;

/// <summary>All orders of a log, with what came back of them.</summary>
public sealed class OrderBook
{
    private readonly Dictionary<string, Dictionary<LineId, SoldOrder>> _byNumber = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Sku, string Channel), List<SoldLine>> _open = [];
    private readonly List<SoldOrder> _orders = [];

    private readonly bool _hasReturns;

    private OrderBook(bool hasReturns) => _hasReturns = hasReturns;

    /// <summary>The orders, by the position of their first line.</summary>
    public IReadOnlyList<SoldOrder> Orders => _orders;

    /// <summary>Pieces that came back and no sale accounts for.</summary>
    public int UnmatchedReturns { get; private set; }

    /// <summary>The orders of sold and returned lines; other lines do not matter.</summary>
    /// <param name="movements">The lines, in any order.</param>
    /// <param name="channel">A channel by its key; lines of a channel that is not there, or had another currency, do not count.</param>
    public static OrderBook Of(IEnumerable<Movement> movements, Func<string, Channel?> channel)
    {
        var (lines, hasReturns) = (new List<Movement>(), false);
        foreach (var line in movements)
            if (line.What is MovementKind.Sold or MovementKind.Returned)
            {
                lines.Add(line);
                hasReturns |= line.What == MovementKind.Returned;
            }

        var book = new OrderBook(hasReturns);
        foreach (var line in InOrder.Of(lines, SoldFirst))
            if (line.Channel is { } key && channel(key) is { } terms && (line.Currency is null || line.Currency == terms.Currency))
                book.Take(line, key, terms);
        book._orders.ForEach(OrderNet.Share);
        return book;
    }

    private static int SoldFirst(Movement one, Movement other) => one.On != other.On ? one.On.CompareTo(other.On)
        : one.What != other.What ? one.What.CompareTo(other.What) : one.Position.CompareTo(other.Position);

    private void Take(Movement line, string channel, Channel terms)
    {
        if (line.What == MovementKind.Sold)
            Sell(line, channel, terms);
        else
            Return(line, channel);
    }

    private void Sell(Movement line, string channel, Channel terms)
    {
        SoldOrder? order = null;
        if (line.Order is { } number)
        {
            ref var known = ref CollectionsMarshal.GetValueRefOrAddDefault(On(channel), number, out _);
            order = known ??= new SoldOrder(channel, terms);
        }

        if (order is not { Lines.Count: > 0 })
            _orders.Add(order ??= new SoldOrder(channel, terms));

        var sold = new SoldLine(line, order);
        order.Add(sold);
        if (!_hasReturns)
            return;
        if (!_open.TryGetValue((line.Sku, channel), out var open))
            _open.Add((line.Sku, channel), open = []);
        open.Add(sold);
    }

    /// <summary>The orders with a number on a channel.</summary>
    private Dictionary<LineId, SoldOrder> On(string channel)
    {
        if (!_byNumber.TryGetValue(channel, out var orders))
            _byNumber.Add(channel, orders = []);
        return orders;
    }

    /// <summary>From the order that the line names, else from the last sale of the design there.</summary>
    private void Return(Movement line, string channel)
    {
        var (left, sku) = (line.Pieces, line.Sku);
        if (line.Order is { } number && On(channel).TryGetValue(number, out var order))
            foreach (var sold in order.Lines.Where(sold => sold.Line.Sku == sku))
                left -= Back(sold, left, line.Resale);
        if (_open.TryGetValue((sku, channel), out var open))
            for (var i = open.Count - 1; i >= 0 && left > 0; i--)
            {
                left -= Back(open[i], left, line.Resale);
                if (i == open.Count - 1 && open[i].Returned == open[i].Line.Pieces)
                    open.RemoveAt(i);
            }

        UnmatchedReturns += left;
    }

    private static int Back(SoldLine sold, int most, bool resale)
    {
        var pieces = int.Min(most, sold.Line.Pieces - sold.Returned);
        sold.Returned += pieces;
        sold.Resold += resale ? pieces : 0;
        return pieces;
    }
}
