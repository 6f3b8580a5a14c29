using System.Runtime.InteropServices;

namespace PriceFloor.Storage;

/// <summary>
/// A movement of pieces as it lies in the store, with numbers in place of names (<see cref="LogName"/>): <see cref="MovementLine"/> says what its
/// fields are. A value, since a million of them are read.
/// </summary>
[StructLayout(LayoutKind.Auto)]
public readonly struct MovementRow
{
    private const long None = long.MinValue;

    private readonly long _paid, _listed, _fees, _shippingCharged, _shippingCost;
    private readonly int _place, _currency, _stall;
    private readonly byte _what, _grade;
    private readonly bool _comesToNothing, _isOfOrder;
    private readonly ulong _orderMark;

    /// <summary>Of the columns that <see cref="Columns"/> names.</summary>
    internal MovementRow(Row row)
    {
        Position = row.Number(0);
        (Source, Design, Day, _what) = ((int)row.Number(1), (int)row.Number(2), (int)row.Number(3), (byte)row.Number(4));
        (_place, _currency, Pieces) = ((int)row.Number(5), (int)row.Number(6), (int)row.Number(7));
        (_paid, _listed, _fees) = (row.NumberOrNull(8) ?? None, row.NumberOrNull(9) ?? None, row.NumberOrNull(10) ?? None);
        (_shippingCharged, _shippingCost) = (row.NumberOrNull(11) ?? None, row.NumberOrNull(12) ?? None);
        (_stall, _grade, _comesToNothing) = ((int)row.Number(13), (byte)row.Number(14), row.Number(15) != 0);
        Piece = row.Text(16);
        var mark = row.EightBytes(17);
        (_isOfOrder, _orderMark) = (mark is not null, mark ?? 0);
    }

    /// <summary>As it was packed.</summary>
    internal MovementRow(ref PackedNumbers from)
    {
        var has = (Has)from.Read();
        (Position, Source, Design, Day) = (from.Read(), (int)from.Read(), (int)from.Read(), (int)from.Read());
        (Pieces, _what, _place, _currency) = ((int)from.Read(), (byte)from.Read(), (int)from.Read(), (int)from.Read());
        _paid = has.HasFlag(Has.Paid) ? from.Read() : None;
        _listed = has.HasFlag(Has.Listed) ? from.Read() : None;
        _fees = has.HasFlag(Has.Fees) ? from.Read() : None;
        _shippingCharged = has.HasFlag(Has.ShippingCharged) ? from.Read() : None;
        _shippingCost = has.HasFlag(Has.ShippingCost) ? from.Read() : None;
        (_stall, _grade) = has.HasFlag(Has.StallOrGrade) ? ((int)from.Read(), (byte)from.Read()) : default;
        (_comesToNothing, _isOfOrder) = (has.HasFlag(Has.NoResale), has.HasFlag(Has.Order));
        _orderMark = _isOfOrder ? from.ReadEight() : 0;
        Piece = has.HasFlag(Has.Piece) ? from.ReadText() : null;
    }

    private MovementRow(in MovementRow row, bool isOfOrder) => (this, _isOfOrder, _orderMark) = (row, isOfOrder, isOfOrder ? row._orderMark : 0);

    [Flags]
    private enum Has
    {
        Nothing = 0, Paid = 1, Listed = 2, Order = 4, Fees = 8, ShippingCharged = 16, ShippingCost = 32, StallOrGrade = 64, NoResale = 128,
        Piece = 256,
    }

    /// <summary>The columns of a line, and the name of its piece, which few lines have: a join would cost each of them.</summary>
    internal static string Columns =>
        """
        line.position, line.source, line.design, line.day, line.what, line.place, line.currency, line.pieces, line.paid, line.listed, line.fees,
        line.shipping_charged, line.shipping_cost, line.stall, line.grade, line.resale = 0,
        CASE WHEN line.piece IS NOT NULL THEN (SELECT name.key FROM name WHERE name.id = line.piece) END, line.order_mark
        """;

    public long Position { get; }

    public int Source { get; }

    public int Design { get; }

    /// <summary>Days since 0001-01-01.</summary>
    public int Day { get; }

    public int What => _what;

    public int? Place => OrNull(_place);

    public int? Currency => OrNull(_currency);

    public int Pieces { get; }

    public long? Paid => OrNull(_paid);

    public long? Listed => OrNull(_listed);

    public long? Fees => OrNull(_fees);

    public long? ShippingCharged => OrNull(_shippingCharged);

    public long? ShippingCost => OrNull(_shippingCost);

    public int? Stall => OrNull(_stall);

    public int? Grade => OrNull(_grade);

    /// <summary>Whether what came back can be sold again.</summary>
    public bool Resale => !_comesToNothing;

    /// <summary>In words: most pieces have a name of their own, so a list of names would have them all.</summary>
    public string? Piece { get; }

    /// <summary>The order (<see cref="LogMarks.OfOrder"/>), as a number.</summary>
    public ulong? OrderMark => _isOfOrder ? _orderMark : null;

    /// <summary>The same, of no order.</summary>
    public MovementRow WithoutOrder() => new(this, isOfOrder: false);

    /// <summary>The most bytes that it takes when it is packed.</summary>
    internal int MostPacked => 16 * PackedNumbers.MostOfNumber + (Piece?.Length ?? 0) * 3;

    internal void Pack(ref PackedNumbers to)
    {
        var has = If(_paid != None, Has.Paid) | If(_listed != None, Has.Listed) | If(_fees != None, Has.Fees)
            | If(_shippingCharged != None, Has.ShippingCharged) | If(_shippingCost != None, Has.ShippingCost)
            | If(_stall != 0 || _grade != 0, Has.StallOrGrade) | If(_comesToNothing, Has.NoResale) | If(_isOfOrder, Has.Order)
            | If(Piece is not null, Has.Piece);
        foreach (var number in (ReadOnlySpan<long>)[(long)has, Position, Source, Design, Day, Pieces, _what, _place, _currency])
            to.Write(number);
        foreach (var amount in (ReadOnlySpan<long>)[_paid, _listed, _fees, _shippingCharged, _shippingCost])
            if (amount != None)
                to.Write(amount);
        if (has.HasFlag(Has.StallOrGrade))
        {
            to.Write(_stall);
            to.Write(_grade);
        }

        if (_isOfOrder)
            to.WriteEight(_orderMark);
        if (Piece is not null)
            to.Write(Piece);
    }

    private static Has If(bool has, Has field) => has ? field : Has.Nothing;

    private static long? OrNull(long amount) => amount == None ? null : amount;

    /// <summary>No name has the number 0.</summary>
    private static int? OrNull(int number) => number == 0 ? null : number;
}
