namespace PriceFloor.Storage;

/// <summary>The result of checking a whole store.</summary>
/// <param name="Schema">Its schema.</param>
/// <param name="Documents">Existing documents.</param>
/// <param name="Revisions">Their revisions and those of deleted documents.</param>
/// <param name="Position">The newest position.</param>
/// <param name="Faults">The faults; empty if there are none.</param>
public sealed record StoreReport(int Schema, long Documents, long Revisions, long Position, IReadOnlyList<string> Faults);
