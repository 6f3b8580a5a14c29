namespace PriceFloor.Storage;

/// <summary>A revision that a write holds back until it must be sent.</summary>
/// <param name="Revision">The revision.</param>
/// <param name="References">What the document refers to now.</param>
/// <param name="ChangesReferences">Whether it referred to something else before.</param>
internal sealed record Held(Revision Revision, IReadOnlyList<DocumentName> References, bool ChangesReferences)
{
    public DocumentName Document => new(Revision.Kind, Revision.Key);
}
