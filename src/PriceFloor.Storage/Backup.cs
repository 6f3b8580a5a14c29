namespace PriceFloor.Storage;

/// <summary>Copies of the store as it is at one moment, made while others write.</summary>
public static class Backup
{
    /// <summary>The file beside a backup with its hash, in the format of sha256sum.</summary>
    public static string HashFileOf(string file) => file + ".sha256";

    /// <summary>Makes a backup. It gets its name only once it is whole, checked and on the disk; nothing is overwritten.</summary>
    /// <param name="store">The store.</param>
    /// <param name="file">The backup.</param>
    /// <param name="growing">Told the file that grows meanwhile, for whoever watches.</param>
    public static BackupMade Make(string store, string file, Action<string>? growing = null)
    {
        var path = Path.GetFullPath(file);
        var folder = Path.GetDirectoryName(path)!;
        foreach (var there in new[] { path, HashFileOf(path) })
            if (File.Exists(there) || Directory.Exists(there))
                throw new StoreException($"{there} already exists, and a backup overwrites nothing. Choose another name, or delete it first.");

        var part = $"{path}.part-{Guid.NewGuid():N}";
        var hashPart = HashFileOf(part);
        try
        {
            int schema;
            growing?.Invoke(part);
            StoreFile.Create(part).Dispose(); // SQLite fills an existing empty file, so nobody else can read it even while it grows
            using (var connection = StoreFile.Open(store))
            {
                schema = StoreFile.SchemaOf(connection, store);
                connection.Execute("VACUUM INTO @part", new { part }); // one read transaction: writers go on
            }

            using (var copy = StoreFile.Open(part))
                if (StoreFile.Damage(copy) is { Count: > 0 } damage)
                    throw new StoreException(
                        $"The backup was not kept, because the store {Path.GetFullPath(store)} is damaged: {damage[0]} "
                        + "Run check-store, and restore an earlier backup.")
                    {
                        Trouble = StoreTrouble.Damaged,
                    };
            Unix.Flush(part);

            var made = new BackupMade(path, new FileInfo(part).Length, StoreFile.Sha256Of(part), schema);
            using (var hash = new StreamWriter(StoreFile.Create(hashPart)))
                hash.Write($"{made.Sha256}  {Path.GetFileName(path)}\n");
            Unix.Flush(hashPart);
            File.Move(part, path, overwrite: false);
            File.Move(hashPart, HashFileOf(path), overwrite: false);
            Unix.Flush(folder);
            return made;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DataFolder.Because(
                $"The backup {path} cannot be written by {DataFolder.Asker}: {e.Message} "
                + "Check that the folder exists, can be written and has space.", e);
        }
        catch (StoreTroubleException e) when (e.Trouble == StoreTrouble.Damaged)
        {
            throw DataFolder.NotAStore(store, e.Message, e);
        }
        finally
        {
            StoreFile.Delete(part);
            StoreFile.Delete(hashPart);
        }
    }
}

/// <summary>A backup that was made.</summary>
/// <param name="Path">The file.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">Its hash, which is also in the file of the same name with <c>.sha256</c>.</param>
/// <param name="Schema">The schema of the store in it.</param>
public sealed record BackupMade(string Path, long Bytes, string Sha256, int Schema);
