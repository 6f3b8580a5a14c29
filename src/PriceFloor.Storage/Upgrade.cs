namespace PriceFloor.Storage;

/// <summary>A store of an earlier program that was upgraded to the newest schema.</summary>
/// <param name="From">The schema it had.</param>
/// <param name="To">The schema it has.</param>
/// <param name="Backup">The file that keeps the old store; null if the engine's own backups have it.</param>
public sealed record Upgrade(int From, int To, string? Backup);
