using System.Text;

namespace PriceFloor.Pricing.Changes;

/// <summary>The hash FNV-1a of 64 bits. Of the text "foobar": 85944171f73967e8.</summary>
public static class Fnv1A64
{
    /// <summary>The hash of a text in UTF-8.</summary>
    public static ulong Of(string text) => Of(Encoding.UTF8.GetBytes(text));

    /// <summary>The hash of bytes.</summary>
    public static ulong Of(ReadOnlySpan<byte> bytes)
    {
        var hash = 0xCBF29CE484222325;
        foreach (var one in bytes)
            hash = unchecked((hash ^ one) * 0x100000001B3);
        return hash;
    }
}
