using System.Security.Cryptography;
using System.Text;

namespace PriceFloor.Storage;

/// <summary>
/// What is kept of ids: HMAC-SHA256 with the store's own secret, so that a line and an order are known again, but not read. Whoever holds the file
/// holds the secret too, and could try numbers one by one.
/// </summary>
public sealed class LogMarks(byte[] secret)
{
    private const int RefBytes = 16, OrderBytes = 8;

    /// <summary>The mark of a line's id.</summary>
    public byte[] OfRef(string source, string id) => Of("ref", source, id, RefBytes);

    /// <summary>The mark of a line without an id: of what it says, and of how many equal lines stand before it.</summary>
    public byte[] OfContent(string source, string content) => Of("content", source, content, RefBytes);

    /// <summary>The mark of an order's id.</summary>
    public byte[] OfOrder(string source, string id) => Of("order", source, id, OrderBytes);

    private byte[] Of(string kind, string source, string id, int length)
    {
        Span<byte> hash = stackalloc byte[HMACSHA256.HashSizeInBytes];
        HMACSHA256.HashData(secret, Encoding.UTF8.GetBytes($"{kind}\0{source}\0{id}"), hash);
        return hash[..length].ToArray();
    }
}
