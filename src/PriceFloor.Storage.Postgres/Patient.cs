using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>For what nobody waits for, and what may take long: verbs, migrations, large writes that are prepared beside the others.</summary>
internal static class Patient
{
    public static string Of(string connectionString) => new NpgsqlConnectionStringBuilder(connectionString) { CommandTimeout = 0, MaxPoolSize = 10 }.ConnectionString;
}
