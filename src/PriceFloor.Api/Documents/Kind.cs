namespace PriceFloor.Api.Documents;

/// <summary>A kind of stored document, for code that treats them all alike.</summary>
/// <param name="Name">Its name in the store, in problems and in commands.</param>
/// <param name="FaultIn">What is wrong with a stored text of this kind; null if it can be read.</param>
/// <param name="Below">The kind of documents that belong to one of this kind and are deleted with it; null if there is none.</param>
public sealed record Kind(string Name, Func<string, string?> FaultIn, string? Below = null);
