namespace PriceFloor.Pricing.Documents;

/// <summary>The key of a stored document, or the document itself: what-if needs no second schema.</summary>
public sealed record KeyOr<T>(string? Key, T? Document) where T : class;
