using System.Globalization;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// Reads a store and changes nothing in its folder, also while a service writes to it: no lock is taken, and no schema is upgraded.
/// </summary>
internal static class ReadOnlyStore
{
    private const int MostTries = 5;

    /// <summary>
    /// Reads from one moment. Without a log beside it the file is complete, and is read as one that nobody changes; if a service has written
    /// meanwhile, it is read again. With a log SQLite reads both, as beside any writer.
    /// </summary>
    public static T Read<T>(string path, Func<Snapshot, ValueTask<T>> read)
    {
        if (!File.Exists(path))
            throw new StoreException($"There is no store at {Path.GetFullPath(path)}. Check PRICEFLOOR_DATA, or name the folder with --data.")
            {
                Trouble = StoreTrouble.CannotOpen,
            };
        try
        {
            for (var tries = 1; tries <= MostTries && StampOf(path) is { } before; tries++)
            {
                var found = ReadOnce(path, $"{new Uri(Path.GetFullPath(path)).AbsoluteUri}?immutable=1", read);
                if (before == StampOf(path))
                    return found;
            }

            return ReadOnce(path, path, read);
        }
        catch (StoreTroubleException e)
        {
            throw StoreFaults.CannotOpen(path, e);
        }
    }

    private static T ReadOnce<T>(string path, string source, Func<Snapshot, ValueTask<T>> read)
    {
        using var connection = EngineCalls.Open(new SqliteConnectionStringBuilder
        {
            DataSource = source,
            Mode = SqliteOpenMode.ReadOnly,
            DefaultTimeout = 5,
            Pooling = false,
        }.ToString());
        connection.Execute("PRAGMA busy_timeout=5000; PRAGMA temp_store=MEMORY");
        if (StoreFile.SchemaOf(connection, path) is var schema && schema < Migrations.Newest)
            throw new StoreException(string.Create(CultureInfo.InvariantCulture,
                $"The store {Path.GetFullPath(path)} has schema {schema}, and this program reads schema {Migrations.Newest}. Nothing was changed. "
                + $"Start the service on it once, which upgrades it and keeps a copy (verb serve); then ask again."));
        using var session = SqliteSession.On(connection, deferred: true);
        return read(new Snapshot(session)).AtOnce();
    }

    /// <summary>What shows whether the file was changed; null if there is a log beside it.</summary>
    private static (long Bytes, DateTime Written)? StampOf(string path) =>
        File.Exists(path + "-wal") ? null : new FileInfo(path) is { Exists: true } file ? (file.Length, file.LastWriteTimeUtc) : null;
}
