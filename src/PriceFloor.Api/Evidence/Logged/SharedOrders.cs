using System.Collections;
using System.Collections.Immutable;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// Which lines are of one order: 8 bytes for a line, since an index in the store would be written at a random place with each sale. What an
/// order costs is shared by all its lines, so a design's take rests on lines of other designs too, where they were sold together. Only half of an
/// order's mark is kept, so two orders may be taken for one: whoever reads the lines compares the whole marks.
/// </summary>
public sealed class SharedOrders
{
    private const ulong MarkBits = 0xFFFF_FFFF_0000_0000;
    private const int MostRecent = 20_000;

    /// <summary>Those that came since the last settling.</summary>
    private readonly Dictionary<ulong, List<uint>> _recent = [];

    /// <summary>Half of a mark and the position, in order. Marks are hashes, so they lie evenly.</summary>
    private ulong[] _lines;
    private int _count, _recentCount;
    private BitArray _shared = new(0);
    private ImmutableHashSet<uint> _sharedSince = [];
    private uint _last;

    /// <param name="expected">So many lines are to be loaded.</param>
    public SharedOrders(long expected) => _lines = new ulong[expected];

    /// <summary>Says of a position whether its line may be of an order with others, as things are now.</summary>
    public Func<long, bool> Sharing
    {
        get
        {
            var (settled, since) = (_shared, _sharedSince);
            return position => (position < settled.Length && settled[(int)position]) || since.Contains((uint)position);
        }
    }

    /// <summary>Adds a line that came since.</summary>
    public void Add(OrderRow row)
    {
        if (!_recent.TryGetValue(row.OrderMark & MarkBits, out var positions))
            _recent.Add(row.OrderMark & MarkBits, positions = []);
        positions.Add(PositionOf(row));
        _sharedSince = _sharedSince.Union(Of([row.OrderMark], _ => true).Select(position => (uint)position));
        if (++_recentCount > MostRecent)
            Settle();
    }

    /// <summary>Adds one of many lines, which are not found before <see cref="Settle"/>.</summary>
    public void Load(OrderRow row) => Load(row.OrderMark & MarkBits, PositionOf(row));

    /// <summary>All lines are found again.</summary>
    public void Settle()
    {
        foreach (var (mark, positions) in _recent)
            positions.ForEach(position => Load(mark, position));
        _recent.Clear();
        (_recentCount, _sharedSince) = (0, []);
        Array.Sort(_lines, 0, _count);
        _shared = new BitArray(checked((int)_last + 1));
        for (var i = 1; i < _count; i++)
            if ((_lines[i] & MarkBits) == (_lines[i - 1] & MarkBits))
                _shared[(int)(uint)_lines[i]] = _shared[(int)(uint)_lines[i - 1]] = true;
    }

    /// <summary>The positions of lines in some orders, of those that have more than one.</summary>
    /// <param name="marks">The orders.</param>
    /// <param name="which">Which positions.</param>
    public List<long> Of(IEnumerable<ulong> marks, Func<long, bool> which)
    {
        var positions = new List<long>();
        foreach (var mark in marks)
        {
            var (first, recent) = (FirstOf(mark & MarkBits), _recent.GetValueOrDefault(mark & MarkBits));
            var after = first;
            while (after < _count && (_lines[after] & MarkBits) == (mark & MarkBits))
                after++;
            if (after - first + (recent?.Count ?? 0) < 2)
                continue;
            for (var i = first; i < after; i++)
                if (which((uint)_lines[i]))
                    positions.Add((uint)_lines[i]);
            foreach (var position in recent ?? [])
                if (which(position))
                    positions.Add(position);
        }

        return positions;
    }

    /// <summary>Where the lines of an order begin, or would.</summary>
    private int FirstOf(ulong mark)
    {
        var (middle, around) = ((int)((mark >> 32) * (ulong)_count >> 32), (int)Math.Sqrt(_count));
        var (low, high) = (int.Max(0, middle - around), int.Min(_count, middle + around));
        if (low > 0 && _lines[low - 1] >= mark)
            low = 0;
        if (high < _count && _lines[high] < mark)
            high = _count;
        var at = Array.BinarySearch(_lines, low, high - low, mark);
        return at < 0 ? ~at : at;
    }

    private void Load(ulong mark, uint position)
    {
        if (_count == _lines.Length)
            Array.Resize(ref _lines, _count + MostRecent);
        _lines[_count++] = mark | position;
    }

    private uint PositionOf(OrderRow row) => _last = uint.Max(_last, checked((uint)row.Position));
}
