using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace PriceFloor.Storage;

/// <summary>
/// Many movements in little room, about 25 bytes each: those of some designs, found again by design, and others, found again by order. The room is
/// used again when it is cleared.
/// </summary>
public sealed class HeldMovements
{
    private const int Link = sizeof(int), End = -1, BlockBits = 18, BlockBytes = 1 << BlockBits;

    private readonly Dictionary<long, (int First, int Last)> _byDesign = [];

    /// <summary>The last line of an order; each leads to the one before.</summary>
    private readonly Dictionary<ulong, int> _byOrder = [];

    /// <summary>Blocks, since one array that grows would leave each of its former ones behind.</summary>
    private readonly List<byte[]> _blocks = [];
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
    /// <param name="isShared">Whether other lines may be of its order: then it is found by it too, else it comes back as an order of its own.</param>
    public void Add(in MovementRow row, bool isShared)
    {
        var (place, (first, last)) = (isShared ? PutShared(row) : Put(row.WithoutOrder(), 0), _byDesign[row.Design]);
        if (last != End)
            BinaryPrimitives.WriteInt32LittleEndian(Bytes(last), place);
        _byDesign[row.Design] = (first == End ? place : first, place);
    }

    /// <summary>Adds a movement of another design, which is found by its order.</summary>
    public void AddOther(in MovementRow row) => PutShared(row);

    /// <summary>The orders by which movements are found.</summary>
    public IReadOnlyCollection<ulong> Orders => _byOrder.Keys;

    /// <summary>Hands on the movements of a design, as they were added.</summary>
    public void Of(long design, Action<MovementRow> take)
    {
        for (var at = _byDesign[design].First; at != End; at = BinaryPrimitives.ReadInt32LittleEndian(Bytes(at)))
            take(At(at));
    }

    /// <summary>Hands on the movements of an order that are found by it, in any order; none is nothing.</summary>
    public void OfOrder(ulong order, Action<MovementRow> take)
    {
        for (var at = _byOrder.GetValueOrDefault(order, End); at != End; at = BinaryPrimitives.ReadInt32LittleEndian(Bytes(at - Link)))
            take(At(at));
    }

    /// <summary>Whether movements are found by an order.</summary>
    public bool HasOrder(ulong order) => _byOrder.ContainsKey(order);

    private Span<byte> Bytes(int place) => _blocks[place >> BlockBits].AsSpan(place & (BlockBytes - 1));

    private MovementRow At(int place)
    {
        var packed = new PackedNumbers(Bytes(place)[Link..]);
        return new MovementRow(ref packed);
    }

    /// <summary>Before the line is where the one before it in its order lies.</summary>
    private int PutShared(in MovementRow row)
    {
        var place = Put(row, Link);
        BinaryPrimitives.WriteInt32LittleEndian(Bytes(place - Link), row.OrderMark is { } mark ? Before(mark, place) : End);
        return place;
    }

    /// <summary>Returns its place, where the one after it of its design is told, with so many bytes before it.</summary>
    private int Put(in MovementRow row, int before)
    {
        var most = before + Link + row.MostPacked;
        if (_blocks.Count <= _length >> BlockBits || _blocks[_length >> BlockBits].Length - (_length & (BlockBytes - 1)) < most)
            NextBlock(most);
        var place = _length + before;
        var bytes = Bytes(place);
        BinaryPrimitives.WriteInt32LittleEndian(bytes, End);
        var packed = new PackedNumbers(bytes[Link..]);
        row.Pack(ref packed);
        _length = int.Min(checked(place + Link + packed.Length), checked((place | (BlockBytes - 1)) + 1)); // one may have a block of its own
        return place;
    }

    /// <summary>The line of an order that was its last so far; now it is another.</summary>
    private int Before(ulong order, int place)
    {
        ref var last = ref CollectionsMarshal.GetValueRefOrAddDefault(_byOrder, order, out var isKnown);
        var before = isKnown ? last : End;
        last = place;
        return before;
    }

    /// <summary>Goes to the beginning of a block with enough room.</summary>
    private void NextBlock(int bytes)
    {
        if ((_length & (BlockBytes - 1)) != 0)
            _length = checked((_length | (BlockBytes - 1)) + 1);
        var block = _length >> BlockBits;
        if (block == _blocks.Count)
            _blocks.Add(new byte[int.Max(BlockBytes, bytes)]);
        else if (_blocks[block].Length < bytes)
            _blocks[block] = new byte[bytes];
    }
}
