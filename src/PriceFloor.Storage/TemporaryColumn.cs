namespace PriceFloor.Storage;

/// <summary>A column of a temporary table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="IsBytes">It has bytes; else whole numbers.</param>
public sealed record TemporaryColumn(string Name, bool IsBytes = false);
