using System.Globalization;

namespace PriceFloor.Storage.Sqlite;

/// <summary>Puts a backup in the place of the store, as another <see cref="StoreEpoch"/>. The caller holds the data folder's lock.</summary>
internal static class Restoring
{
    /// <summary>Checks a copy of the file, keeps the present store beside it, and then renames the copy into place.</summary>
    public static Restored Restore(string file, string store, DateTimeOffset now)
    {
        var (source, target) = (Path.GetFullPath(file), Path.GetFullPath(store));
        if (!File.Exists(source))
            throw new StoreException($"There is no file {source} to restore from.");
        if (source == target)
            throw new StoreException($"{source} is the store itself; name a backup.");

        var part = $"{target}.restoring-{Guid.NewGuid():N}";
        try
        {
            MustBeWhole(source);
            MustBeReadable(source);
            if (Directory.Exists(Path.GetDirectoryName(target)))
                foreach (var left in Directory.GetFiles(Path.GetDirectoryName(target)!, $"{Path.GetFileName(target)}.restoring-*"))
                    File.Delete(left); // of a restore that was killed
            StoreFile.Copy(source, part); // all checks are made on this copy: what is checked is what is put in place
            var schema = Check(source, part);
            var (replaced, given) = File.Exists(target) ? Keep(target, now) : (null, null);
            BeginAnotherLife(part, given, HighWater.Beside(target), (Path.GetFileName(source), now));
            foreach (var suffix in new[] { "-wal", "-shm" })
                File.Delete(target + suffix); // kept beside the replaced store; left here, its pages would be read into the restored one
            File.Move(part, target, overwrite: true);
            Unix.Flush(Path.GetDirectoryName(target)!);
            using (var connection = StoreFile.Open(target))
                HighWater.Renew(connection, target); // a stop before this begins one more life at the next start
            return new Restored(replaced, schema);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DataFolder.Refused(Path.GetDirectoryName(target)!, e);
        }
        finally
        {
            StoreFile.Delete(part);
        }
    }

    /// <summary>
    /// A copy of a store that was in use has its newest writes in the log beside it. Nobody can tell whether the two were copied at
    /// one moment, so the service does not guess.
    /// </summary>
    private static void MustBeWhole(string source)
    {
        foreach (var suffix in new[] { "-wal", "-journal" })
            if (new FileInfo(source + suffix) is { Exists: true, Length: > 0 and var bytes })
                throw new StoreException(string.Create(CultureInfo.InvariantCulture,
                    $"{source} has a log of {bytes} bytes beside it, {source}{suffix}: it is a copy of a store that was in use, not a backup, "
                    + $"and its newest writes are in that log. Nothing was changed. To keep them, "
                    + $"put the two into an empty folder as pricefloor.db and pricefloor.db{suffix}, "
                    + $"run \"backup OTHER\" with PRICEFLOOR_DATA set to that folder, and restore OTHER. To go without them, move the log away."));
    }

    private static void MustBeReadable(string source)
    {
        foreach (var file in new[] { source, BackupMade.HashFileOf(source) }.Where(File.Exists))
            try
            {
                using var _ = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                throw DataFolder.Because($"{file} cannot be read by {DataFolder.Asker}: {e.Message} Nothing was changed.", e);
            }
    }

    private static int Check(string source, string copy)
    {
        if (File.Exists(BackupMade.HashFileOf(source)))
        {
            var told = File.ReadAllText(BackupMade.HashFileOf(source)).Split(' ', '\n')[0].Trim();
            if (!string.Equals(told, StoreFile.Sha256Of(copy), StringComparison.OrdinalIgnoreCase))
                throw new StoreException(
                    $"{source} does not have the hash that {BackupMade.HashFileOf(source)} has: it was changed or cut. "
                    + "Nothing was changed. Use another backup.")
                {
                    Trouble = StoreTrouble.Damaged,
                };
        }

        try
        {
            using var connection = StoreFile.Open(copy);
            var schema = StoreFile.SchemaOf(connection, source);
            if (StoreFile.Damage(connection) is { Count: > 0 } damage)
                throw StoreFaults.NotAStore(source, damage[0]);
            return schema;
        }
        catch (StoreTroubleException e)
        {
            throw StoreFaults.NotAStore(source, e.Message, e);
        }
    }

    /// <summary>If the highest number in the replaced store is unknown, the note beside it has nearly that number.</summary>
    private static void BeginAnotherLife(string copy, long? given, HighWater? note, (string Name, DateTimeOffset At) backup)
    {
        using (var connection = StoreFile.Open(copy))
        {
            // a plain copy of a store has a log beside it; this one goes in alone
            connection.Execute("PRAGMA journal_mode=DELETE; PRAGMA synchronous=FULL");
            Migrations.Apply(connection); // a copy: the backup keeps its own schema
            using var session = SqliteSession.On(connection, deferred: false);
            given ??= long.Max(StoreEpoch.HighestNumber(session).AtOnce() + StoreEpoch.Leap, note?.MayHaveGiven ?? 0);
            StoreEpoch.BeginAnother(session, given.Value).AtOnce();
            Trail.Tell(session, (Trail.CommandLine, Trail.WholeStore, backup.Name, Trail.Restored),
                Trail.TimeOf(session, backup.At).AtOnce()).AtOnce();
            session.Keep().AtOnce();
        }

        Unix.Flush(copy);
    }

    /// <summary>
    /// A copy of the present store, whatever state it is in; the store itself stays where it is until the rename. Also the highest
    /// revision number that was given in it; null if that is unknown.
    /// </summary>
    private static (string Copy, long? Given) Keep(string target, DateTimeOffset now)
    {
        long? given = null;
        try
        {
            using var connection = StoreFile.Open(target);
            connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
            given = Continuity.Given(connection, target);
        }
        catch (StoreTroubleException)
        {
            // A broken store is kept as it is, with its log.
        }

        var replaced = $"{target}.replaced-{StoreFile.Stamp(now)}";
        for (var again = 2; File.Exists(replaced); again++)
            replaced = $"{target}.replaced-{StoreFile.Stamp(now)}-{again}";
        foreach (var suffix in new[] { "", "-wal" })
            if (File.Exists(target + suffix))
                StoreFile.Copy(target + suffix, replaced + suffix);
        Unix.Flush(Path.GetDirectoryName(target)!);
        return (replaced, given);
    }
}
