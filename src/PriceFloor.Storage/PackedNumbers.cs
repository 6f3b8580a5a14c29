using System.Buffers.Binary;
using System.Text;

namespace PriceFloor.Storage;

/// <summary>
/// Numbers and texts one after another in bytes, small numbers in few: seven bits a byte, the low ones first. They are read as they were written.
/// </summary>
/// <param name="bytes">Where they are, or go.</param>
internal ref struct PackedNumbers(Span<byte> bytes)
{
    private const int Bits = 7, More = 1 << Bits;

    private readonly Span<byte> _bytes = bytes;

    /// <summary>How many bytes were written or read.</summary>
    public int Length { get; private set; }

    /// <summary>The most bytes of a number.</summary>
    public const int MostOfNumber = 10;

    public void Write(long number)
    {
        var left = (ulong)((number << 1) ^ (number >> 63)); // the sign goes last, so that few below 0 are small too
        for (; left >= More; left >>= Bits)
            _bytes[Length++] = (byte)(left | More);
        _bytes[Length++] = (byte)left;
    }

    public long Read()
    {
        var (left, shift) = (0UL, 0);
        for (; _bytes[Length] >= More; shift += Bits)
            left |= (ulong)(_bytes[Length++] & (More - 1)) << shift;
        left |= (ulong)_bytes[Length++] << shift;
        return (long)(left >> 1) ^ -(long)(left & 1);
    }

    /// <summary>A number of which no byte is likelier than another.</summary>
    public void WriteEight(ulong number)
    {
        BinaryPrimitives.WriteUInt64LittleEndian(_bytes[Length..], number);
        Length += sizeof(ulong);
    }

    public ulong ReadEight()
    {
        Length += sizeof(ulong);
        return BinaryPrimitives.ReadUInt64LittleEndian(_bytes[(Length - sizeof(ulong))..]);
    }

    public void Write(string text)
    {
        Write(Encoding.UTF8.GetByteCount(text));
        Length += Encoding.UTF8.GetBytes(text, _bytes[Length..]);
    }

    public string ReadText()
    {
        var length = (int)Read();
        Length += length;
        return Encoding.UTF8.GetString(_bytes.Slice(Length - length, length));
    }
}
