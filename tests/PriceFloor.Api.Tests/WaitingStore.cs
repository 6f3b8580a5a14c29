using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Storage;
using PriceFloor.Storage.Tests.Waiting;

namespace PriceFloor.Api.Tests;

/// <summary>
/// A store whose every answer comes later, as over a network. With PRICEFLOOR_TEST_STORE=waiting, every studio has one; a database's answers come
/// later by themselves.
/// </summary>
internal static class WaitingStore
{
    public static bool IsForAll { get; } = Environment.GetEnvironmentVariable("PRICEFLOOR_TEST_STORE") == "waiting";

    public static void UseWaitingStore(this IWebHostBuilder host) => host.ConfigureServices(services => services.AddSingleton(provider =>
    {
        var clock = provider.GetRequiredService<TimeProvider>();
        return new StoreMaker(place =>
        {
            var engine = place.Engine(clock);
            return new Store(engine.AnswersAtOnce ? new WaitingEngine(engine) : engine, clock);
        });
    }));
}
