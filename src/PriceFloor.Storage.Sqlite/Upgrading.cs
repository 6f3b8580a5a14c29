using System.Globalization;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>Upgrades a store to the newest schema: only if there is room, and with a checked backup of the old one beside it.</summary>
internal static class Upgrading
{
    /// <summary>The backup, the log of a script that rewrites everything, and the growth of the store.</summary>
    private const int TimesItsSize = 3;

    private const long Besides = 1 << 20;

    /// <summary>The upgrade that was made; null if the store is new or already has the newest schema.</summary>
    public static Upgrade? Bring(SqliteConnection connection, string path, DateTimeOffset now)
    {
        var from = connection.ExecuteScalar<int>("PRAGMA user_version");
        if (from == 0 || from >= Migrations.Newest)
        {
            Migrations.Apply(connection);
            return null;
        }

        MustHaveRoom(path, from);
        var backup = BackUp(path, from, now);
        try
        {
            Migrations.Apply(connection);
            return new Upgrade(from, Migrations.Newest, backup);
        }
        catch (StoreTroubleException e)
        {
            throw DataFolder.Because(string.Create(CultureInfo.InvariantCulture,
                $"The store {Path.GetFullPath(path)} could not be brought from schema {from} to {Migrations.Newest} by {DataFolder.Asker}: "
                + $"{e.Message} The step that failed is undone. Fix the cause and start again, "
                + $"or start the earlier program after restoring {backup}, which is the store as it was."), e);
        }
    }

    /// <summary>One backup of each schema is kept, so repeated starts do not fill the disk.</summary>
    private static string BackUp(string path, int from, DateTimeOffset now)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"{Path.GetFullPath(path)}.schema-{from}-");
        var earlier = Directory.GetFiles(Path.GetDirectoryName(name)!, Path.GetFileName(name) + "*");
        var backup = name + StoreFile.Stamp(now);
        for (var again = 2; earlier.Contains(backup); again++)
            backup = string.Create(CultureInfo.InvariantCulture, $"{name}{StoreFile.Stamp(now)}-{again}");
        Backup.Make(path, backup);
        foreach (var file in earlier)
            File.Delete(file);
        return backup;
    }

    private static void MustHaveRoom(string path, int from)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var size = new[] { path, path + "-wal" }.Select(file => new FileInfo(file)).Where(file => file.Exists).Sum(file => file.Length);
        var (needed, free) = ((size * TimesItsSize) + Besides, new DriveInfo(folder).AvailableFreeSpace);
        if (free < needed)
            throw new StoreException(string.Create(CultureInfo.InvariantCulture,
                $"The store {Path.GetFullPath(path)} has schema {from} and must be brought to {Migrations.Newest}, which needs {Megabytes(needed)} "
                + $"MB free in {folder}; there are {Megabytes(free)} MB for {DataFolder.Asker}. Nothing was changed. Make room and start again."))
            {
                Trouble = StoreTrouble.Full,
            };
    }

    private static string Megabytes(long bytes) => (bytes / 1048576m).ToString("0.0", CultureInfo.InvariantCulture);
}
