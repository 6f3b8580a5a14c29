using PriceFloor.Api.Configuration;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// Where a host's studios are: each in a folder, which is a data folder that every verb understands; or, where the host's store is in a database,
/// each in rows of its own beside the host's.
/// </summary>
/// <param name="dataFolder">The folder of the host.</param>
/// <param name="host">The place of the host's store.</param>
public sealed class StudioFiles(string dataFolder, StorePlace host)
{
    private const string Forgotten = ".forgotten-";

    private readonly string _all = Path.Combine(dataFolder, "studios");

    public string FolderOf(string key) => Path.Combine(_all, key);

    public StorePlace PlaceOf(string key) => StoreChoice.OfStudio(host, FolderOf(key), key);

    /// <summary>Whether a studio is only in its folder, so whoever has the folder's lock has the studio alone.</summary>
    public bool AreAlone => !host.HasRoomForStudios;

    /// <summary>An empty place for a new studio; what one of that key left behind when it was forgotten is deleted.</summary>
    public async Task BeginAsync(string key)
    {
        if (host.HasRoomForStudios)
            await PlaceOf(key).BeginAsync();
        else
            DeleteFolder(key);
    }

    /// <summary>Deletes a studio with all that is in its folder: its store, its backups.</summary>
    public async Task DeleteAsync(string key)
    {
        if (host.HasRoomForStudios)
            await PlaceOf(key).DeleteAsync();
        DeleteFolder(key);
    }

    private void DeleteFolder(string key)
    {
        var folder = FolderOf(key);
        if (!Directory.Exists(folder))
            return;
        var gone = Path.Combine(_all, $"{Forgotten}{Guid.NewGuid():N}");
        Directory.Move(folder, gone); // at once, so a stop halfway leaves no part of it in its place
        Directory.Delete(gone, recursive: true);
    }

    /// <summary>Finishes what a stop left half deleted.</summary>
    public void ClearAway()
    {
        if (!Directory.Exists(_all))
            return;
        foreach (var gone in Directory.GetDirectories(_all, Forgotten + "*"))
            Directory.Delete(gone, recursive: true);
    }
}
