namespace PriceFloor.Api.Backups;

/// <summary>The studios of a host, as far as their backups need them.</summary>
/// <param name="All">All of them; none if there is no host.</param>
public sealed record StudioBackups(Func<ValueTask<IReadOnlyList<StudioToBackUp>>> All);

/// <summary>A studio whose store is copied from time to time.</summary>
/// <param name="Folder">Its data folder.</param>
/// <param name="Open">Opens it for as long as the question to its backups takes; null if it cannot be opened now.</param>
public sealed record StudioToBackUp(string Folder, Func<Func<BackupFolder, TimeSpan>, Task<TimeSpan?>> Open);
