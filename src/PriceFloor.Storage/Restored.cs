namespace PriceFloor.Storage;

/// <summary>A store that was restored: where the replaced one is (null if there was none), and the schema of the backup.</summary>
public sealed record Restored(string? Replaced, int Schema);
