using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>A key in a file that only its owner can read, so no key appears in a log or on a screen.</summary>
public static class KeyFile
{
    /// <summary>Writes a key into the data folder and says where.</summary>
    public static string Write(string folder, string name, string key)
    {
        var path = Path.GetFullPath(Path.Combine(folder, name));
        try
        {
            File.Delete(path); // an earlier file may be open to others
            using var writer = new StreamWriter(path, PrivateFiles.Options(FileMode.Create, FileAccess.Write));
            writer.Write(key + "\n");
            return path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StoreException(
                $"The key cannot be written to {path} by {DataFolder.Asker}: {e.Message} Make the data folder writable, with space.", e);
        }
    }
}
