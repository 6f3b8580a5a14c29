using System.Globalization;
using System.Reflection;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage;

/// <summary>The schema as append-only scripts, each applied once in a transaction of its own.</summary>
public static class Migrations
{
    private static readonly Assembly s_assembly = typeof(Migrations).Assembly;

    /// <summary>The number of the newest script.</summary>
    public static int Newest => Scripts.Count;

    private static IReadOnlyList<string> Scripts { get; } =
        [.. s_assembly.GetManifestResourceNames().Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>Brings a store to the newest schema, or to an earlier one for a test. A store from a newer program is refused.</summary>
    public static void Apply(SqliteConnection connection, int? upTo = null)
    {
        var version = connection.ExecuteScalar<int>("PRAGMA user_version");
        if (version > Newest)
            throw Newer(connection.DataSource, version);

        for (var number = version + 1; number <= (upTo ?? Newest); number++)
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            connection.Execute(Read(Scripts[number - 1]), transaction: transaction);
            connection.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {number}"), transaction: transaction);
            transaction.Commit();
        }
    }

    internal static StoreException Newer(string path, int schema) => new(string.Create(CultureInfo.InvariantCulture,
        $"The store {Path.GetFullPath(path)} has schema {schema}; this program, run by {DataFolder.Asker}, knows up to {Newest}. Nothing was changed. Start the newer program, or restore a backup made before the upgrade."));

    private static string Read(string name)
    {
        using var reader = new StreamReader(s_assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}

/// <summary>The store cannot be used; the message says why and what to do.</summary>
public sealed class StoreException : Exception
{
    public StoreException() { }

    public StoreException(string message) : base(message) { }

    public StoreException(string message, Exception inner) : base(message, inner) { }
}
