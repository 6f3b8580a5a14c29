namespace PriceFloor.Storage;

/// <summary>A name in the log and its number, which never changes.</summary>
public sealed record LogName(long Id, string Kind, string Key);
