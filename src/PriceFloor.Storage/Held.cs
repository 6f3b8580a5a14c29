using System.Text;

namespace PriceFloor.Storage;

/// <summary>A revision that a write holds back until it must be sent.</summary>
/// <param name="Revision">The revision.</param>
/// <param name="References">What the document refers to now.</param>
/// <param name="Before">What it referred to before.</param>
internal sealed record Held(Revision Revision, IReadOnlyList<DocumentName> References, IReadOnlyList<DocumentName> Before)
{
    /// <summary>What a row takes beside its text: its other columns, its places in indexes.</summary>
    public const long BytesOfRow = 200;

    /// <summary>About how many bytes it takes.</summary>
    public long Bytes => BytesOfRow + (Revision.Body is { } body ? Encoding.UTF8.GetByteCount(body) : 0);

    public DocumentName Document => new(Revision.Kind, Revision.Key);
}
