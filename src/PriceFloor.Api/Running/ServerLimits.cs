using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Transport.Sockets;
using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Running;

/// <summary>The limits of the web server itself, before any of our code runs: slow or numerous callers cannot occupy it.</summary>
public static class ServerLimits
{
    /// <summary>Grace period before the minimum data rate is enforced.</summary>
    private static readonly TimeSpan s_grace = TimeSpan.FromSeconds(5);

    public static void UseServerLimits(this WebApplicationBuilder builder)
    {
        builder.Services.AddOptions<KestrelServerOptions>().Configure<Settings>(Limit);
        // No queues between sockets and threads: of a hundred answers, the slowest waits a third less, and the others no longer than before.
        builder.Services.Configure<SocketTransportOptions>(transport => transport.IOQueueCount = 0);
    }

    private static void Limit(KestrelServerOptions kestrel, Settings settings)
    {
        kestrel.AddServerHeader = false;
        var limits = kestrel.Limits;
        limits.MaxConcurrentConnections = settings.Connections;
        limits.KeepAliveTimeout = TimeSpan.FromSeconds(60);
        if (settings.TrustedProxies.Count == 0)
            kestrel.ConfigureEndpointDefaults(endpoint => endpoint.Use(new ConnectionsPerAddress(settings.ConnectionsPerAddress).Count));
        limits.MaxRequestBodySize = settings.BodyBytes + 1L; // one more than the limit, so we report a larger body ourselves; batches raise it
        limits.RequestHeadersTimeout = TimeSpan.FromSeconds(settings.HeaderSeconds);
        limits.MinRequestBodyDataRate = limits.MinResponseDataRate = new MinDataRate(settings.LeastBytesPerSecond, s_grace);
        limits.MaxRequestLineSize = 8 * 1024;
        limits.MaxRequestHeadersTotalSize = 32 * 1024;
        limits.MaxRequestHeaderCount = 100;
        limits.Http2.MaxStreamsPerConnection = 100;
    }
}
