using System.Globalization;
using PriceFloor.Api.Telemetry;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Backups;

/// <summary>The backups that the service itself makes: one at a time, in <c>backups/</c> in the data folder, named by time.</summary>
/// <param name="folder">The data folder of the store.</param>
/// <param name="place">Where the store is.</param>
/// <param name="store">The store.</param>
/// <param name="counts">Counts backups that fail.</param>
/// <param name="clock">Names the backups.</param>
public sealed class BackupFolder(string folder, StorePlace place, Store store, ServiceCounts counts, TimeProvider clock)
{
    private const string Folder = "backups", Start = "pricefloor-", End = ".db", TimeFormat = "yyyyMMdd'T'HHmmss'Z'";

    private readonly Lock _making = new();

    public string Path { get; } = System.IO.Path.GetFullPath(System.IO.Path.Combine(folder, Folder));

    /// <summary>Makes a backup and records in the trail who requested it.</summary>
    public BackupMade Make(string by)
    {
        lock (_making)
            try
            {
                var made = MakeNow();
                Tell(by, made);
                return made;
            }
            catch
            {
                counts.BackupFailed();
                throw;
            }
    }

    private void Tell(string by, BackupMade made)
    {
        try
        {
            store.Write(by, async writing =>
            {
                await writing.BackedUp(made.Path);
                return true;
            });
        }
        catch (StoreTroubleException e)
        {
            Log.Warning("The backup {Path} was made, but could not be recorded in the trail: {Message}", made.Path, e.Message);
        }
    }

    private BackupMade MakeNow()
    {
        CreateFolder();
        foreach (var left in Directory.GetFiles(Path, $"{Start}*{End}.part-*")
                .Where(file => File.GetLastWriteTimeUtc(file) < clock.GetUtcNow().UtcDateTime.AddDays(-1)))
            File.Delete(left); // of a backup that was killed
        // If the clock was set back, the newest must still have the newest name, or it would be the first to be deleted.
        var time = clock.GetUtcNow() is var now && Newest is { } newest && newest > now ? newest : now;
        var stem = Start + time.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture);
        var file = System.IO.Path.Combine(Path, stem + End);
        for (var again = 2; File.Exists(file); again++)
            file = System.IO.Path.Combine(Path, string.Create(CultureInfo.InvariantCulture, $"{stem}-{again}{End}"));
        return place.BackUp(file);
    }

    /// <summary>When the newest backup was made; null if there is none.</summary>
    public DateTimeOffset? Newest => NewestIn(Path);

    /// <summary>The same of a data folder that nobody has opened.</summary>
    public static DateTimeOffset? NewestOf(string dataFolder) => NewestIn(System.IO.Path.Combine(dataFolder, Folder));

    private static DateTimeOffset? NewestIn(string path) => Made(path).Select(backup => (DateTimeOffset?)backup.Time).LastOrDefault();

    /// <summary>Deletes all but the newest. Leaves files without a name of ours alone.</summary>
    public void KeepOnly(int count)
    {
        lock (_making)
            foreach (var (file, _) in Made(Path).SkipLast(count))
            {
                File.Delete(file);
                File.Delete(BackupMade.HashFileOf(file));
            }
    }

    /// <summary>The existing backups, oldest first.</summary>
    private static IEnumerable<(string File, DateTimeOffset Time)> Made(string path) => !Directory.Exists(path) ? []
        : Directory.EnumerateFiles(path, $"{Start}*{End}")
        .Select(file => (File: file, Parts: System.IO.Path.GetFileNameWithoutExtension(file)[Start.Length..].Split('-')))
        .Select(found => (found.File, Time: TimeOf(found.Parts), Again: found.Parts.Length == 1 ? 1
            : int.TryParse(found.Parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var again) ? again
            : 0))
        .Where(found => found is { Time: not null, Again: > 0 }).OrderBy(found => found.Time).ThenBy(found => found.Again)
        .Select(found => (found.File, found.Time!.Value)).ToList();

    private static DateTimeOffset? TimeOf(string[] parts) => parts.Length <= 2
        && DateTimeOffset.TryParseExact(parts[0], TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time) ? time
            : null;

    private void CreateFolder()
    {
        try
        {
            DataFolder.Create(Path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DataFolder.Refused(Path, e);
        }
    }
}
