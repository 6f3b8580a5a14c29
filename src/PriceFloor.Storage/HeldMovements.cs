using System.Buffers.Binary;

namespace PriceFloor.Storage;

/// <summary>
/// Many movements in little room, about 30 bytes each: those of some designs, found again by design, and others, found again by order. The room is
/// used again when it is cleared.
/// </summary>
public sealed class HeldMovements
{
    private const int Link = sizeof(int), End = -1;

    private readonly Dictionary<long, (int First, int Last)> _byDesign = [];
    private readonly Dictionary<ulong, List<int>> _byOrder = [];
    private byte[] _bytes = [];
    private int _length;

    /// <summary>Lets go of all, and awaits lines of some designs.</summary>
    public void Clear(IEnumerable<long> designs)
    {
        _byDesign.Clear();
        _byOrder.Clear();
        _length = 0;
        foreach (var design in designs)
            _byDesign.Add(design, (End, End));
    }

    /// <summary>Whether it has a design's movements.</summary>
    public bool Has(long design) => _byDesign.ContainsKey(design);

    /// <summary>Adds a movement of one of its designs.</summary>
    /// <param name="row">The movement.</param>
    /// <param name="isShared">Whether it is to be found by its order too.</param>
    public void Add(MovementRow row, bool isShared)
    {
        var (first, last) = _byDesign[row.Design];
        if (last != End)
            BinaryPrimitives.WriteInt32LittleEndian(_bytes.AsSpan(last), _length);
        _byDesign[row.Design] = (first == End ? _length : first, _length);
        Put(row, isShared);
    }

    /// <summary>Adds a movement of another design, which is found by its order.</summary>
    public void AddOther(MovementRow row) => Put(row, isShared: true);

    /// <summary>The orders by which movements are found.</summary>
    public IReadOnlyCollection<ulong> Orders => _byOrder.Keys;

    /// <summary>The movements of a design, as they were added.</summary>
    public IEnumerable<MovementRow> Of(long design)
    {
        for (var at = _byDesign[design].First; at != End; at = BinaryPrimitives.ReadInt32LittleEndian(_bytes.AsSpan(at)))
            yield return At(at);
    }

    /// <summary>The movements of an order that are found by it.</summary>
    public IEnumerable<MovementRow> OfOrder(ulong order) => _byOrder.TryGetValue(order, out var places) ? places.Select(At) : [];

    private MovementRow At(int at)
    {
        var packed = new PackedNumbers(_bytes.AsSpan(at + Link));
        return new MovementRow(ref packed);
    }

    private void Put(MovementRow row, bool isShared)
    {
        if (isShared && row.OrderMark is { } order)
        {
            if (!_byOrder.TryGetValue(order, out var places))
                _byOrder.Add(order, places = new List<int>(2));
            places.Add(_length);
        }

        var most = _length + Link + row.MostPacked;
        if (most > _bytes.Length)
            Array.Resize(ref _bytes, int.Max(most, checked(_bytes.Length + (_bytes.Length / 2))));
        BinaryPrimitives.WriteInt32LittleEndian(_bytes.AsSpan(_length), End);
        var packed = new PackedNumbers(_bytes.AsSpan(_length + Link));
        row.Pack(ref packed);
        _length += Link + packed.Length;
    }
}
