using Microsoft.AspNetCore.Hosting;
using PriceFloor.Storage.Tests.Postgres;

namespace PriceFloor.Api.Tests.Running;

/// <summary>Two services on one database, as behind a proxy that sends each request to either.</summary>
internal sealed class TwoProcesses : IAsyncDisposable
{
    private readonly string _database = PostgresCluster.One.NewDatabase();

    public TwoProcesses(params (string Name, string Value)[] settings)
    {
        One = new Studio(configure: host => Configure(host, settings));
        Other = new Studio(configure: host => Configure(host, settings));
    }

    public Studio One { get; }

    public Studio Other { get; }

    public Studio Any(Random random) => random.Next(2) == 0 ? One : Other;

    public async ValueTask DisposeAsync()
    {
        await One.DisposeAsync();
        await Other.DisposeAsync();
        PostgresCluster.One.Drop(_database);
    }

    private void Configure(IWebHostBuilder host, (string Name, string Value)[] settings)
    {
        host.UseSetting("PRICEFLOOR_STORE", PostgresCluster.One.ConnectionString(_database));
        foreach (var (name, value) in settings)
            host.UseSetting(name, value);
    }
}
