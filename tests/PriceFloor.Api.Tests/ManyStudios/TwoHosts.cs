using Microsoft.AspNetCore.Hosting;
using PriceFloor.Storage.Tests.Postgres;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>Two hosts on one database, as behind a proxy that sends each request to either.</summary>
internal sealed class TwoHosts : IAsyncDisposable
{
    private readonly string _database = PostgresCluster.One.NewDatabase();

    public TwoHosts() => (One, Other) = (Start(), Start());

    public Studio One { get; }

    public Studio Other { get; }

    /// <summary>The same key at the other.</summary>
    public HttpClient AtOther(HttpClient client) => At(Other, client);

    /// <summary>The same key at any.</summary>
    public static HttpClient At(Studio host, HttpClient client) => host.ClientWith(client.DefaultRequestHeaders.Authorization!.Parameter);

    /// <summary>One more, for the caller to dispose of.</summary>
    public Studio Third() => Start();

    /// <summary>The names of all that have rows in the database, in order.</summary>
    public IReadOnlyList<string> Rows() => PostgresCluster.One.Read(_database, "SELECT key FROM studio ORDER BY key");

    public async ValueTask DisposeAsync()
    {
        await One.DisposeAsync();
        await Other.DisposeAsync();
        PostgresCluster.One.Drop(_database);
    }

    private Studio Start() => HostedService.Start(host => host.UseSetting("PRICEFLOOR_STORE", PostgresCluster.One.ConnectionString(_database)));
}
