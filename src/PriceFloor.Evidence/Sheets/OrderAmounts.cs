using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Sheets;

/// <summary>
/// Amounts of whole orders, which sheets repeat on each line or give on one: each counts once, and is spread over the order's lines by what they
/// brought, in whole minor units, so that the parts add up to it.
/// </summary>
internal sealed class OrderAmounts
{
    private const int UsualDecimals = 2;

    private readonly Dictionary<SentMovement, OrderShare> _shares = new(ReferenceEqualityComparer.Instance);
    private readonly KnownNames _names;

    public OrderAmounts(IReadOnlyList<SentMovement> lines, KnownNames names)
    {
        _names = names;
        foreach (var order in OfSeveralLines(lines).Where(order => order.Exists(line => line.HasOrderAmounts)))
            Share(order);
    }

    public OrderShare Of(SentMovement line)
    {
        if (_shares.TryGetValue(line, out var share))
            return share;
        if (!IsPaid(line) || !line.HasOrderAmounts)
            return default;
        if (Whole(line) is { } all)
            return all;
        Share([line]);
        return _shares[line];
    }

    private static bool IsPaid(SentMovement line) => line.What is MovementKind.Sold or MovementKind.Returned;

    /// <summary>Most orders have one line, which has all of its amounts.</summary>
    private static IEnumerable<List<SentMovement>> OfSeveralLines(IReadOnlyList<SentMovement> lines)
    {
        var first = new Dictionary<string, SentMovement>(StringComparer.Ordinal);
        var several = new Dictionary<string, List<SentMovement>>(StringComparer.Ordinal);
        foreach (var line in lines.Where(IsPaid))
            if (line.Order is { } order && !first.TryAdd(order, line))
                if (several.TryGetValue(order, out var others))
                    others.Add(line);
                else
                    several[order] = [first[order], line];
        return several.Values;
    }

    /// <summary>What came back takes no part in the amounts of an order unless all of it did.</summary>
    private void Share(List<SentMovement> order)
    {
        var sharing = order.Exists(line => line.What == MovementKind.Sold) ? order.FindAll(line => line.What == MovementKind.Sold) : order;
        sharing.Sort(ByRef);
        var fault = default(Code);
        var (discount, fees) = (Parts(line => line.Discount), Parts(line => line.Fees));
        var (charged, cost) = (Parts(line => line.ShippingCharged), Parts(line => line.ShippingCost));
        for (var i = 0; i < sharing.Count && fault is null; i++)
            if (discount?[i] > (sharing[i].Value ?? 0))
                fault = FaultCodes.OutOfRange;
        foreach (var line in order)
            _shares[line] = new OrderShare { Fault = fault };
        for (var i = 0; i < sharing.Count && fault is null; i++)
            _shares[sharing[i]] = new OrderShare(discount?[i] ?? 0, fees?[i], charged?[i], cost?[i]);

        decimal[]? Parts(Func<SentMovement, decimal?> amountOf)
        {
            var amounts = order.Select(amountOf).Where(amount => amount is not null).Distinct().ToList();
            if (amounts.Count > 1)
                fault ??= SheetLineCodes.OrderAmountsDiffer;
            else if (amounts is [{ } amount] && Shared(amount, sharing) is { } parts)
                return parts;
            else if (amounts.Count == 1)
                fault ??= FaultCodes.OutOfRange;
            return null;
        }
    }

    /// <summary>An order of one line has all of its amounts, as most orders are; null if an amount is out of range.</summary>
    private OrderShare? Whole(SentMovement line) =>
        IsWhole(line.Discount, line) && IsWhole(line.Fees, line) && IsWhole(line.ShippingCharged, line) && IsWhole(line.ShippingCost, line)
        && !(line.Discount > (line.Value ?? 0))
            ? new OrderShare(line.Discount ?? 0, line.Fees, line.ShippingCharged, line.ShippingCost)
            : null;

    private bool IsWhole(decimal? amount, SentMovement line) => amount is not { } all || Rounding.HasAtMost(all, DecimalsOf(all, line));

    private int DecimalsOf(decimal amount, SentMovement line) => line.Channel is { } channel && _names.Channel(channel) is { } known
        ? known.Currency.Decimals
        : int.Max(UsualDecimals, Rounding.DecimalsOf(amount));

    /// <summary>The parts of an amount; null if it is finer than the currency.</summary>
    private decimal[]? Shared(decimal amount, List<SentMovement> lines)
    {
        var decimals = DecimalsOf(amount, lines[0]);
        if (!Rounding.HasAtMost(amount, decimals))
            return null;
        var unit = new decimal(1, 0, 0, isNegative: false, (byte)decimals);
        var hasValue = lines.Exists(line => line.Value > 0);
        decimal[] weights = [.. lines.Select(line => hasValue ? line.Value ?? 0 : line.Pieces)];
        return [.. Spread.ByWeight((long)(amount / unit), weights).Select(part => part * unit)];
    }

    /// <summary>In the order of ids, so another order of the sheet spreads in the same way; without ids as they are in the sheet.</summary>
    private static int ByRef(SentMovement one, SentMovement other) =>
        LineOrder.First([LineOrder.Refs(one.Ref, other.Ref), one.Line.CompareTo(other.Line)]);
}
