using PriceFloor.Api.Changes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>One change at its places in all documents that it names.</summary>
/// <param name="Index">Its place in the list of changes.</param>
/// <param name="Targets">Each document, as it is stored, and the change's places in it.</param>
/// <param name="Number">The factor, amount or value, a range's likely one; null for a change without a number.</param>
/// <param name="Range">The place of its range among the ranges; null if it has none.</param>
internal sealed record ChangeStep(int Index, IReadOnlyList<ChangeTarget> Targets, decimal? Number, int? Range)
{
    /// <summary>The documents after it.</summary>
    public ChangedDocuments Apply(ChangedDocuments before, decimal? number, Held? held = null) => before.With(Targets.Select(target =>
        KeyValuePair.Create(target.Document, target.Operation.Apply(before.Find(target.Document) ?? target.Stored, number, held))));
}

/// <summary>A change's places in one document.</summary>
/// <param name="Document">The document.</param>
/// <param name="Stored">The document as it is stored, or an empty one if it is new.</param>
/// <param name="Operation">The change in it.</param>
internal sealed record ChangeTarget(DocumentName Document, object Stored, ChangeOperation Operation);
