using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Orders;

/// <summary>One sold line of an order, what it brought, and what of it came back.</summary>
public sealed class SoldLine
{
    internal SoldLine(Movement line, SoldOrder order) => (Line, Order) = (line, order);

    public Movement Line { get; }

    public SoldOrder Order { get; }

    /// <summary>What of the line reached the studio, unrounded, before anything came back.</summary>
    public decimal Net { get; internal set; }

    /// <summary>Pieces of it that came back.</summary>
    public int Returned { get; internal set; }

    /// <summary>Of these, pieces that can be sold again.</summary>
    public int Resold { get; internal set; }

    /// <summary>Net of the pieces that stayed sold.</summary>
    public decimal Kept => Returned == 0 ? Net : Net - Net * Returned / Line.Pieces;
}

/// <summary>One order on a channel: all lines with its number, or one line without.</summary>
public sealed class SoldOrder
{
    private readonly List<SoldLine> _lines = new(1); // most orders have one

    internal SoldOrder(string channel, Channel terms) => (Channel, Terms) = (channel, terms);

    /// <summary>The channel's key.</summary>
    public string Channel { get; }

    public Channel Terms { get; }

    /// <summary>In order of position.</summary>
    public IReadOnlyList<SoldLine> Lines => _lines;

    public int Pieces => _lines.Sum(line => line.Line.Pieces);

    public DateOnly On => _lines[0].Line.On;

    internal void Add(SoldLine line) => _lines.Add(line);
}
