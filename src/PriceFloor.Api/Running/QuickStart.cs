using System.Text.Json;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Demo;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Running;

/// <summary>
/// What is there only to make the start and the first price check quick. Each says what it saves, measured with and without it on two processors;
/// what saves nothing does not stay. <c>docs/decisions/0013-a-quick-start.md</c> has the figures, and those of what is done elsewhere.
/// </summary>
public static class QuickStart
{
    /// <summary>
    /// Loads the store's libraries and the code of the first answer while the host is built, in parallel. The first 200 comes 33 ms sooner. A failure
    /// here happens again where the result is needed, and is reported there.
    /// </summary>
    public static void Preload() => _ = Task.Run(() =>
    {
        StoreChoice.LoadLibraries();
        JsonSerializer.SerializeToUtf8Bytes(new HealthAnswer(""), WireJson.Options);
    });

    /// <summary>Opens the store while the pipeline and the routes are mapped. The first 200 comes 13 ms sooner.</summary>
    public static void OpenStore(WebApplication app) => _ = app.Services.GetRequiredService<StoreInitializer>().Begin();

    /// <summary>The first price check takes 74 ms instead of 153; on two processors the first 200 comes 45 ms later for it.</summary>
    public static void UseWarmUp(this WebApplicationBuilder builder) => builder.Services.AddHostedService<WarmUp>();

    /// <summary>
    /// The demo studio needs every validator and kind of document, so it is made only if asked for. The first 200 comes 25 ms sooner.
    /// </summary>
    public static void UseLazyDemo(this IServiceCollection services) =>
        services.AddSingleton(provider => new Lazy<DemoStudio>(provider.GetRequiredService<DemoStudio>));
}
