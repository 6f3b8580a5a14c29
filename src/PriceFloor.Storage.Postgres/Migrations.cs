using System.Globalization;
using System.Reflection;
using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>The schema as append-only scripts, each applied once in its own transaction, by one process at a time.</summary>
internal static class Migrations
{
    /// <summary>Any number that other programs in the database do not take.</summary>
    private const long Lock = 0x50464D4947;

    private static readonly Assembly s_assembly = typeof(Migrations).Assembly;

    /// <summary>The number of the newest script.</summary>
    public static int Newest => Scripts.Count;

    private static IReadOnlyList<string> Scripts { get; } =
        [.. s_assembly.GetManifestResourceNames().Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>The schema of the store in a database; 0 if there is none.</summary>
    public static async ValueTask<int> SchemaOf(NpgsqlConnection connection) =>
        await connection.ExecuteScalar<bool>("SELECT to_regclass('migration') IS NOT NULL")
            ? await connection.ExecuteScalar<int>("SELECT coalesce(max(number), 0) FROM migration") : 0;

    /// <summary>Brings a database to the newest schema, and returns the one that it had. A store from a newer program is refused.</summary>
    public static async ValueTask<int> Bring(NpgsqlConnection connection, string name)
    {
        var found = await SchemaOf(connection);
        if (found > Newest)
            throw new StoreException(string.Create(CultureInfo.InvariantCulture,
                $"The store {name} is from a newer PriceFloor: it has schema {found}, and this program knows {Newest}. Start the newer program."));
        if (found == Newest)
            return found;
        if (!await connection.ExecuteScalar<bool>(MayMigrate))
            throw new StoreException(
                string.Create(CultureInfo.InvariantCulture, $"The store {name} has schema {found} and must be brought to {Newest}")
                + ", which only the role may do that owns its tables. Start the program once as that role, with its PRICEFLOOR_STORE, and then again "
                + "as this one.");
        await connection.Run(string.Create(CultureInfo.InvariantCulture, $"SELECT pg_advisory_lock({Lock})"));
        try
        {
            await connection.Run(
                "CREATE TABLE IF NOT EXISTS migration (number integer PRIMARY KEY, applied_at timestamptz NOT NULL DEFAULT now())");
            for (var number = await SchemaOf(connection) + 1; number <= Newest; number++)
                await connection.Run(string.Create(CultureInfo.InvariantCulture,
                    $"BEGIN;\n{Read(Scripts[number - 1])}\nINSERT INTO migration (number) VALUES ({number});\nCOMMIT"));
        }
        finally
        {
            await connection.Run(string.Create(CultureInfo.InvariantCulture, $"SELECT pg_advisory_unlock({Lock})"));
        }

        return found;
    }

    /// <summary>Whether the role owns what is there, or may make it.</summary>
    private const string MayMigrate =
        """
        SELECT CASE WHEN to_regclass('migration') IS NULL THEN has_schema_privilege(current_schema(), 'CREATE')
            ELSE (SELECT pg_has_role(relowner, 'USAGE') FROM pg_class WHERE oid = to_regclass('migration')) END
        """;

    private static string Read(string script)
    {
        using var reader = new StreamReader(s_assembly.GetManifestResourceStream(script)!);
        return reader.ReadToEnd();
    }
}
