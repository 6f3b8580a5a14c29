namespace PriceFloor.Storage;

/// <summary>What a studio has in the database of its host.</summary>
/// <param name="Key">The key of the studio.</param>
/// <param name="Delete">Deletes that, and nothing of a studio that is begun with the same key later.</param>
public sealed record StudioThere(string Key, Func<Task> Delete);
