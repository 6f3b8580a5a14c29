namespace PriceFloor.Api.Documents;

/// <summary>A kind of stored document, for what treats them all alike.</summary>
/// <param name="Name">What the store, the problems and the commands call it.</param>
/// <param name="FaultIn">What is wrong with a stored text of this kind; null if it can be read.</param>
/// <param name="Below">The kind of documents that belong to one of this kind and go with it; null if there is none.</param>
public sealed record Kind(string Name, Func<string, string?> FaultIn, string? Below = null);
