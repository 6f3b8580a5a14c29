using System.Globalization;
using System.Reflection;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>The schema as append-only scripts, each applied once in its own transaction.</summary>
internal static class Migrations
{
    private static readonly Assembly s_assembly = typeof(Migrations).Assembly;

    /// <summary>The number of the newest script.</summary>
    public static int Newest => Scripts.Count;

    private static IReadOnlyList<string> Scripts { get; } =
        [.. s_assembly.GetManifestResourceNames().Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>Makes a store of a schema as an earlier program would have, or brings one to it.</summary>
    public static void Apply(string path, int upTo)
    {
        using var connection = EngineCalls.Open(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        Apply(connection, upTo);
    }

    /// <summary>Brings a store to the newest schema, or to an earlier one. A store from a newer program is refused.</summary>
    internal static void Apply(SqliteConnection connection, int? upTo = null)
    {
        var version = connection.ExecuteScalar<int>("PRAGMA user_version");
        if (version > Newest)
            throw Newer(connection.DataSource, version);

        for (var number = version + 1; number <= (upTo ?? Newest); number++)
        {
            using var transaction = connection.Begin(deferred: false);
            connection.Execute(Read(Scripts[number - 1]), transaction: transaction);
            connection.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {number}"), transaction: transaction);
            transaction.Keep();
        }
    }

    internal static StoreException Newer(string path, int schema) => new(string.Create(CultureInfo.InvariantCulture,
        $"The store {Path.GetFullPath(path)} has schema {schema}; this program, run by {DataFolder.Asker}, knows up to {Newest}. "
        + $"Nothing was changed. Start the newer program, or restore a backup made before the upgrade."));

    private static string Read(string name)
    {
        using var reader = new StreamReader(s_assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
