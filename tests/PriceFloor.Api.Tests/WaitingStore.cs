using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Configuration;
using PriceFloor.Storage;
using PriceFloor.Storage.Tests.Waiting;

namespace PriceFloor.Api.Tests;

/// <summary>A store whose every answer comes later, as over a network. With PRICEFLOOR_TEST_STORE=waiting, every studio has one.</summary>
internal static class WaitingStore
{
    public static bool IsForAll { get; } = Environment.GetEnvironmentVariable("PRICEFLOOR_TEST_STORE") == "waiting";

    public static void UseWaitingStore(this IWebHostBuilder host) => host.ConfigureServices(services => services.AddSingleton(provider =>
    {
        _ = provider.GetRequiredService<StoreLock>(); // made before the store, so it is released after it
        var clock = provider.GetRequiredService<TimeProvider>();
        return new Store(new WaitingEngine(provider.GetRequiredService<Settings>().Store.Engine(clock)), clock);
    }));
}
