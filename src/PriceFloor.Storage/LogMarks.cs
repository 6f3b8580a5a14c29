using System.Security.Cryptography;
using System.Text;

namespace PriceFloor.Storage;

/// <summary>
/// What is kept of ids: HMAC-SHA256 with the store's own secret, so that a line and an order are known again, but not read. Whoever holds the file
/// holds the secret too, and could try numbers one by one. For one thread at a time.
/// </summary>
public sealed class LogMarks(byte[] secret) : IDisposable
{
    private const int RefBytes = 16, OrderBytes = 8;

    private readonly IncrementalHash _hash = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, secret); // its key is prepared once
    private byte[] _bytes = new byte[256];

    /// <summary>The mark of a line's id.</summary>
    public byte[] OfRef(string source, string id) => Of("ref", source, id, RefBytes);

    /// <summary>The mark of a line without an id: of what it says, and of how many equal lines stand before it.</summary>
    public byte[] OfContent(string source, string content) => Of("content", source, content, RefBytes);

    /// <summary>The mark of an order's id.</summary>
    public byte[] OfOrder(string source, string id) => Of("order", source, id, OrderBytes);

    public void Dispose() => _hash.Dispose();

    private byte[] Of(string kind, string source, string id, int length)
    {
        var used = 0;
        Add(kind);
        Add("\0");
        Add(source);
        Add("\0");
        Add(id);
        _hash.AppendData(_bytes, 0, used);
        Span<byte> hash = stackalloc byte[HMACSHA256.HashSizeInBytes];
        _hash.GetHashAndReset(hash);
        return hash[..length].ToArray();

        void Add(string text)
        {
            var most = Encoding.UTF8.GetMaxByteCount(text.Length);
            if (_bytes.Length - used < most)
                Array.Resize(ref _bytes, used + most);
            used += Encoding.UTF8.GetBytes(text, _bytes.AsSpan(used));
        }
    }
}
