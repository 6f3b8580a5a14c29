using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Sheets;

/// <summary>
/// From movements as they were sent to those that count: cancelled lines, repeated lines, orders, days, names and currencies. Each line ends up in
/// exactly one place.
/// </summary>
public sealed class MovementSettling
{
    private readonly LineSorting<Movement> _sorting = new();
    private readonly string _source;
    private readonly KnownNames _names;
    private readonly LogWindow _window;

    private MovementSettling(string source, KnownNames names, LogWindow window) => (_source, _names, _window) = (source, names, window);

    /// <summary>Settles the lines of one request.</summary>
    /// <param name="sent">The lines.</param>
    /// <param name="source">Who sent them.</param>
    /// <param name="names">The names that the caller may use.</param>
    /// <param name="window">The days that it is about.</param>
    public static SettledLines<Movement> Settle(IReadOnlyList<SentMovement> sent, string source, KnownNames names, LogWindow window)
    {
        var settling = new MovementSettling(source, names, window);
        var readable = settling.Readable(sent).ToList();
        var refs = new SameRefs<SentMovement>(readable, line => line.Ref, (one, other) => one with { Line = other.Line } == other);
        var own = new List<SentMovement>();
        foreach (var line in readable)
            if (refs.Differ(line.Ref))
                settling._sorting.Refuse(line.Line, SheetLineCodes.RefUsedTwice, line.Money);
            else if (refs.Repeats(line))
                settling._sorting.Repeat(line.Money);
            else
                own.Add(line);
        var amounts = new OrderAmounts(own, names);
        foreach (var line in own)
            settling.Place(line, amounts.Of(line));
        return settling._sorting.Done(Order, (entry, position) => entry with { Position = position });
    }

    /// <summary>A line of another day is outside whatever else is wrong with it.</summary>
    private IEnumerable<SentMovement> Readable(IReadOnlyList<SentMovement> sent)
    {
        foreach (var line in sent)
            if (line.Fault is not { } fault && !line.IsCancelled)
                yield return line;
            else if (line.On is { } day && !_window.Holds(day))
                _sorting.PutOutside(line.Money);
            else if (line.IsCancelled)
                _sorting.Cancel(new CancelledLine(line.Line, line.Ref, line.Money));
            else
                _sorting.Refuse(line.Line, line.Fault!, line.Money);
    }

    private void Place(SentMovement line, OrderShare share)
    {
        var paid = line.Value - share.Discount;
        var money = line.What switch
        {
            MovementKind.Sold => paid ?? 0,
            MovementKind.Returned => -(paid ?? 0),
            _ => 0,
        };
        if (!_window.Holds(line.On!.Value))
            _sorting.PutOutside(money);
        else if (share.Fault is { } fault)
            _sorting.Refuse(line.Line, fault, line.Money);
        else if (_names.Design(line.Sku) is not { } design)
            _sorting.Unplace(line.Sku, money);
        else if (Channel(line) is var channel && channel is null && line.Channel is { } name && NeedsChannel(line))
            _sorting.Unplace(name, money);
        else if (AmountFault(line, channel?.Currency) is { } amountFault)
            _sorting.Refuse(line.Line, amountFault, money);
        else
            _sorting.Use(new UsedLine<Movement>(line.Line, line.Ref, Entry(line, (design, channel?.Key, paid), share), money));
    }

    private static bool NeedsChannel(SentMovement line) => line.What != MovementKind.Made;

    private KnownChannel? Channel(SentMovement line) => line.Channel is { } name && NeedsChannel(line) ? _names.Channel(name) : null;

    /// <summary>Amounts are of the channel's currency, and no finer than it.</summary>
    private static Code? AmountFault(SentMovement line, Currency? currency)
    {
        if (currency is null)
            return null;
        if (line.Currency is { } said && said != currency.Code)
            return FaultCodes.CurrencyMismatch;
        return Rounding.HasAtMost(line.Value ?? 0, currency.Decimals) && Rounding.HasAtMost(line.Listed ?? 0, currency.Decimals)
            ? null
            : FaultCodes.OutOfRange;
    }

    private Movement Entry(SentMovement line, (string Design, string? Channel, decimal? Paid) found, OrderShare share) => new()
    {
        Source = _source,
        On = line.On!.Value,
        What = line.What,
        Sku = found.Design,
        Channel = found.Channel,
        Pieces = line.Pieces,
        Paid = found.Paid,
        Listed = line.Listed,
        Order = line.Order is null ? null : LineId.OfText(line.Order),
        Fees = share.Fees,
        ShippingCharged = share.ShippingCharged,
        ShippingCost = share.ShippingCost,
        Grade = line.Grade,
        Resale = line.Resale,
        Stall = line.Stall,
        Piece = line.Piece,
        Position = 0,
    };

    /// <summary>Most lines differ in their day, so the others are only compared on one day.</summary>
    private static int Order(UsedLine<Movement> one, UsedLine<Movement> other) =>
        one.Entry.On.CompareTo(other.Entry.On) is not 0 and var days ? days : OrderOfADay(one, other);

    private static int OrderOfADay(UsedLine<Movement> one, UsedLine<Movement> other)
    {
        var (own, others) = (one.Entry, other.Entry);
        ReadOnlySpan<int> order =
        [
            ((int)own.What).CompareTo((int)others.What), LineOrder.Refs(one.Ref, other.Ref), string.CompareOrdinal(own.Sku, others.Sku),
            string.CompareOrdinal(own.Channel, others.Channel), own.Pieces.CompareTo(others.Pieces), Nullable.Compare(own.Paid, others.Paid),
            one.Line.CompareTo(other.Line),
        ];
        return LineOrder.First(order);
    }
}
