using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>For what nobody waits for, and what may take long: verbs, migrations, large writes that are prepared beside the others.</summary>
internal static class Patient
{
    /// <summary>Few do so at once.</summary>
    private const int Connections = 10;

    public static string Of(string connectionString) =>
        new NpgsqlConnectionStringBuilder(connectionString)
        {
            CommandTimeout = 0,
            MinPoolSize = 0,
            MaxPoolSize = Connections,
            NoResetOnClose = false, // temporary tables and locks of a session end with its use
        }.ConnectionString;
}
