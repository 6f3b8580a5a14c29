using System.Buffers.Binary;
using System.Runtime.InteropServices;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// Which lines are of one order: 16 bytes for a line, since an index in the store would be written at a random place with each sale. What an
/// order costs is shared by all its lines, so a design's take rests on lines of other designs too, where they were sold together.
/// </summary>
internal sealed class SharedOrders
{
    private readonly Dictionary<ulong, List<LineOfOrder>> _recent = [];
    private readonly HashSet<ulong> _shared = [];
    private ulong[] _marks = [];
    private LineOfOrder[] _lines = [];
    private int _count;

    /// <summary>Adds few lines.</summary>
    public void Add(List<OrderRow> rows)
    {
        foreach (var row in rows)
        {
            var (mark, line) = (MarkOf(row.OrderMark), LineOf(row));
            if (Of(mark).Any(other => other.Design != line.Design))
                _shared.Add(mark);
            if (!_recent.TryGetValue(mark, out var lines))
                _recent.Add(mark, lines = []);
            lines.Add(line);
        }
    }

    /// <summary>Adds many lines, which are not found before <see cref="Settle"/>.</summary>
    /// <param name="rows">The lines.</param>
    /// <param name="more">As many are expected after them.</param>
    public void Load(List<OrderRow> rows, long more)
    {
        if (_count + rows.Count > _marks.Length)
        {
            var length = checked((int)(_count + rows.Count + more));
            Array.Resize(ref _marks, length);
            Array.Resize(ref _lines, length);
        }

        foreach (var row in rows)
            (_marks[_count], _lines[_count++]) = (MarkOf(row.OrderMark), LineOf(row));
    }

    /// <summary>All lines are found again.</summary>
    public void Settle()
    {
        Array.Sort(_marks, _lines, 0, _count);
        for (var i = 1; i < _count; i++)
            if (_marks[i] == _marks[i - 1] && _lines[i].Design != _lines[i - 1].Design)
                _shared.Add(_marks[i]);
    }

    /// <summary>The lines of other designs in some orders.</summary>
    public List<LineOfOrder> Others(IEnumerable<ulong> marks, long design)
    {
        var others = new List<LineOfOrder>();
        foreach (var mark in marks)
            if (_shared.Contains(mark))
                others.AddRange(Of(mark).Where(line => line.Design != design));
        return others;
    }

    /// <summary>The mark of an order as a number.</summary>
    public static ulong MarkOf(byte[] mark) => BinaryPrimitives.ReadUInt64BigEndian(mark);

    private static LineOfOrder LineOf(OrderRow row) => new(checked((uint)row.Position), checked((int)row.Design));

    private List<LineOfOrder> Of(ulong mark)
    {
        var (lines, at) = (new List<LineOfOrder>(), Array.BinarySearch(_marks, 0, _count, mark));
        while (at > 0 && _marks[at - 1] == mark)
            at--;
        for (; at >= 0 && at < _count && _marks[at] == mark; at++)
            lines.Add(_lines[at]);
        if (_recent.TryGetValue(mark, out var recent))
            lines.AddRange(recent);
        return lines;
    }
}

/// <summary>A line of an order.</summary>
/// <param name="Position">Its position.</param>
/// <param name="Design">Number of its design.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LineOfOrder(uint Position, int Design);
