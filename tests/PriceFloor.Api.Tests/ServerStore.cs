using System.Collections.Concurrent;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Storage.Tests.Postgres;

namespace PriceFloor.Api.Tests;

/// <summary>A database of PostgreSQL in place of the file. With PRICEFLOOR_TEST_STORE=postgres, every studio has one of its own.</summary>
internal static class ServerStore
{
    private static readonly ConcurrentDictionary<string, string> s_databases = new(StringComparer.Ordinal);

    public static bool IsForAll { get; } = Environment.GetEnvironmentVariable("PRICEFLOOR_TEST_STORE") == "postgres";

    /// <summary>A studio that is started again on its folder finds its database.</summary>
    public static void UseServerStore(this IWebHostBuilder host, string folder) => host.UseSetting("PRICEFLOOR_STORE",
        PostgresCluster.One.ConnectionString(s_databases.GetOrAdd(folder, _ => PostgresCluster.One.NewDatabase())));

    public static void Forget(string folder)
    {
        if (s_databases.TryRemove(folder, out var database))
            PostgresCluster.One.Drop(database);
    }
}
