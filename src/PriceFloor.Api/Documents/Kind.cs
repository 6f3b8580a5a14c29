namespace PriceFloor.Api.Documents;

/// <summary>A kind of stored document, for code that treats them all alike.</summary>
/// <param name="Name">Its name in the store, in problems and in commands.</param>
/// <param name="FaultIn">What is wrong with a stored text of this kind; null if it can be read.</param>
/// <param name="Below">The kinds of documents that belong to one of this kind and are forgotten with it.</param>
public sealed record Kind(string Name, Func<string, string?> FaultIn, params IReadOnlyList<string> Below)
{
    /// <summary>Whether it can be forgotten without being deleted first.</summary>
    public bool IsForgottenWhole { get; init; }
}
