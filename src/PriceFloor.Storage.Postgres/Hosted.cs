using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>The studios of a host as rows: begun, found, deleted. The row named <c>first</c> is the host's own.</summary>
internal static class Hosted
{
    private const string Beginning = "studios/";

    /// <summary>How the rows of a host's studio are named, so none is taken for the host's own.</summary>
    public static string NameOf(string key) => Beginning + key;

    /// <summary>The studios that a host has or had, by their keys.</summary>
    public static async ValueTask<IReadOnlyList<(string Key, int Number)>> All(NpgsqlConnection connection) =>
    [
        .. (await connection.Query<(string Key, int Number)>("SELECT key, id FROM studio")) // the host's own is among them
            .Where(one => one.Key.StartsWith(Beginning, StringComparison.Ordinal)).Select(one => (one.Key[Beginning.Length..], one.Number)),
    ];

    /// <summary>The studio of a name; null if there is none.</summary>
    public static async ValueTask<ServedStudio?> Find(NpgsqlConnection connection, string name, bool losesNothing) =>
        await connection.ExecuteScalar<int?>("SELECT id FROM studio WHERE key = @name", new { name }) is { } number
            ? new ServedStudio(number, losesNothing) : null;

    /// <summary>Begins an empty studio of a name that no other has.</summary>
    public static ValueTask<int> Begin(NpgsqlConnection connection, string name) =>
        connection.ExecuteScalar<int>("SELECT begin_studio(@name)", new { name });

    /// <summary>Deletes every row of a studio, once whoever writes to it has finished; nothing if there is none.</summary>
    public static async ValueTask Delete(NpgsqlConnection connection, ServedStudio studio)
    {
        try
        {
            await using var session = await PostgresSession.Writing(connection, studio, isOwner: false);
            await session.Execute("DELETE FROM studio WHERE id = this_studio()");
            await session.Keep();
        }
        catch (StoreGoneException)
        {
            // Another process has just deleted them.
        }
    }
}
