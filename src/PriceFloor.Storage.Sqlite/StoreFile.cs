using System.Globalization;
using System.Security.Cryptography;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>A store as a file: opened without being changed or made, hashed, and put in its place whole or not at all.</summary>
internal static class StoreFile
{
    private static readonly string[] s_tables = ["access_key", "head", "reference", "revision"];

    private static readonly string[] s_suffixes = ["", "-journal", "-wal", "-shm"];

    /// <summary>Opens an existing file, without upgrading it to the newest schema.</summary>
    public static SqliteConnection Open(string path)
    {
        if (!File.Exists(path))
            throw new StoreException($"There is no store at {Path.GetFullPath(path)}. Check PRICEFLOOR_DATA, or the name of the file.")
            {
                Trouble = StoreTrouble.CannotOpen,
            };
        var file = new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, DefaultTimeout = 5, Pooling = false };
        var connection = EngineCalls.Open(file.ToString());
        try
        {
            connection.Execute("PRAGMA busy_timeout=5000; PRAGMA temp_store=MEMORY"); // in a container nothing but the data folder may be writable
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>The schema of a store that this program understands; another file is refused.</summary>
    public static int SchemaOf(SqliteConnection connection, string path)
    {
        int schema;
        try
        {
            schema = connection.ExecuteScalar<int>("PRAGMA user_version");
            var tables = connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table'").ToHashSet();
            if (schema < 1 || !s_tables.All(tables.Contains))
                throw StoreFaults.NotAStore(path, "it does not have the tables of one.");
        }
        catch (StoreTroubleException e) when (e.Trouble == StoreTrouble.Damaged)
        {
            throw StoreFaults.NotAStore(path, e.Message, e);
        }

        if (schema > Migrations.Newest)
            throw Migrations.Newer(path, schema);
        return schema;
    }

    /// <summary>SQLite's faults of the file; empty if there are none.</summary>
    public static IReadOnlyList<string> Damage(SqliteConnection connection)
    {
        try
        {
            return [.. connection.Query<string>("PRAGMA integrity_check(20)").Where(line => line != "ok")];
        }
        catch (StoreTroubleException e)
        {
            return [e.Message];
        }
    }

    public static string Sha256Of(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    /// <summary>A new empty file that only its owner can read. Files that SQLite later makes beside it get the same permissions.</summary>
    public static FileStream Create(string path) => new(path, PrivateFiles.Options(FileMode.CreateNew, FileAccess.Write));

    /// <summary>A copy that only its owner can read, on the disk when this returns.</summary>
    public static void Copy(string from, string to)
    {
        using (var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite))
        using (var copy = Create(to))
        {
            source.CopyTo(copy);
            copy.Flush(flushToDisk: true);
        }
    }

    /// <summary>Removes a file and the files that SQLite may have made beside it.</summary>
    public static void Delete(string path)
    {
        foreach (var file in s_suffixes.Select(suffix => path + suffix).Where(File.Exists))
            File.Delete(file);
    }

    public static string Stamp(DateTimeOffset time) => time.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
}
