using System.Buffers.Binary;
using System.Collections;

namespace PriceFloor.Evidence.Statistics;

/// <summary>Whole numbers that are kept for long: each takes as many bytes as the one farthest from the least needs, which is 0, 1, 2 or 4.</summary>
internal sealed class CompactNumbers : IReadOnlyList<int>
{
    private readonly int _least, _bytesEach;
    private readonly byte[] _bytes;

    private CompactNumbers(IReadOnlyList<int> numbers, int least, uint farthest)
    {
        (Count, _least) = (numbers.Count, least);
        _bytesEach = farthest switch { 0 => 0, <= byte.MaxValue => 1, <= ushort.MaxValue => 2, _ => 4 };
        _bytes = new byte[checked(Count * _bytesEach)];
        for (var i = 0; i < Count; i++)
            Write(i, (uint)(numbers[i] - _least));
    }

    public static CompactNumbers None { get; } = Of([]);

    public int Count { get; }

    public int this[int index] => _least + _bytesEach switch
    {
        0 => 0,
        1 => _bytes[index],
        2 => BinaryPrimitives.ReadUInt16LittleEndian(_bytes.AsSpan(2 * index)),
        _ => (int)BinaryPrimitives.ReadUInt32LittleEndian(_bytes.AsSpan(4 * index)),
    };

    public static CompactNumbers Of(IReadOnlyList<int> numbers)
    {
        var (least, most) = numbers.Count == 0 ? (0, 0) : (int.MaxValue, int.MinValue);
        for (var i = 0; i < numbers.Count; i++)
            (least, most) = (int.Min(least, numbers[i]), int.Max(most, numbers[i]));
        return new CompactNumbers(numbers, least, (uint)(most - least));
    }

    /// <summary>How many are below a number, where they are in order.</summary>
    public int CountBelow(int number)
    {
        var (low, high) = (0, Count);
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            (low, high) = this[middle] < number ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    public IEnumerator<int> GetEnumerator()
    {
        for (var i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private void Write(int index, uint number)
    {
        if (_bytesEach == 1)
            _bytes[index] = (byte)number;
        else if (_bytesEach == 2)
            BinaryPrimitives.WriteUInt16LittleEndian(_bytes.AsSpan(2 * index), (ushort)number);
        else if (_bytesEach == 4)
            BinaryPrimitives.WriteUInt32LittleEndian(_bytes.AsSpan(4 * index), number);
    }
}
