namespace PriceFloor.Storage.Sqlite;

/// <summary>Copies of the store as it is at one moment, made while others write.</summary>
internal static class Backup
{
    /// <summary>Makes a backup. It gets its name only once it is whole, checked and on the disk; nothing is overwritten.</summary>
    /// <param name="store">The store.</param>
    /// <param name="file">The backup.</param>
    /// <param name="growing">Told the file that grows meanwhile, for whoever watches.</param>
    public static BackupMade Make(string store, string file, Action<string>? growing = null)
    {
        var path = Path.GetFullPath(file);
        var folder = Path.GetDirectoryName(path)!;
        foreach (var there in new[] { path, BackupMade.HashFileOf(path) })
            if (File.Exists(there) || Directory.Exists(there))
                throw new StoreException($"{there} already exists, and a backup overwrites nothing. Choose another name, or delete it first.");

        var part = $"{path}.part-{Guid.NewGuid():N}";
        var hashPart = BackupMade.HashFileOf(part);
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
            File.Move(hashPart, BackupMade.HashFileOf(path), overwrite: false);
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
            throw StoreFaults.NotAStore(store, e.Message, e);
        }
        finally
        {
            StoreFile.Delete(part);
            StoreFile.Delete(hashPart);
        }
    }

    /// <summary>
    /// Records a backup that a verb has made, perhaps beside a service that writes. False if the store cannot be
    /// written, or has an earlier schema.
    /// </summary>
    public static bool Tell(string store, string file, DateTimeOffset now)
    {
        try
        {
            using var connection = StoreFile.Open(store);
            if (StoreFile.SchemaOf(connection, store) < Migrations.Newest)
                return false;
            using var session = SqliteSession.On(connection, deferred: false);
            Trail.Tell(session, (Trail.CommandLine, Trail.WholeStore, Path.GetFileName(file), Trail.BackedUp),
                Trail.TimeOf(session, now).AtOnce()).AtOnce();
            session.Keep().AtOnce();
            return true;
        }
        catch (Exception e) when (e is StoreTroubleException or StoreException)
        {
            return false;
        }
    }
}
