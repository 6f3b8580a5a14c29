using PriceFloor.Api.Configuration;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>The folders of a host's studios: each is a data folder, which every verb understands.</summary>
public sealed class StudioFiles(string dataFolder)
{
    private const string Forgotten = ".forgotten-";

    private readonly string _all = Path.Combine(dataFolder, "studios");

    public string FolderOf(string key) => Path.Combine(_all, key);

    public StorePlace PlaceOf(string key) => StoreChoice.OfStudio(FolderOf(key));

    /// <summary>Deletes the folder of a studio with all that is in it: its store, its backups.</summary>
    public void Delete(string key)
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
