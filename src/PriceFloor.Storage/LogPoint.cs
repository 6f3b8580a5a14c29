namespace PriceFloor.Storage;

/// <summary>Where the log stands. Those of one store are compared: equal ones have the same lines.</summary>
/// <param name="History">The name of its history, where that can change while the store is open.</param>
/// <param name="Number">Another number after each change.</param>
public readonly record struct LogPoint(string History, long Number);
