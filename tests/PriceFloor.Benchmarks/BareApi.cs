using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Logging;

namespace PriceFloor.Benchmarks;

/// <summary>
/// The limit to measure against: reads a small JSON body and returns 300 bytes, and copies a body to its answer; no logging, no keys. It
/// runs with the settings of the runtime that the published service has, whatever they are.
/// </summary>
public static class BareApi
{
    public static Task<ServedProcess> StartAsync(string published, int port) => ServedProcess.StartAsync(
        "dotnet", ["exec", "--runtimeconfig", Path.Combine(published, "PriceFloor.Api.runtimeconfig.json"), typeof(BareApi).Assembly.Location,
            "bare"], new Dictionary<string, string>(), port);

    /// <summary>As if it checked prices; it opens to any key.</summary>
    public static async Task<CheckingService> AsCheckingAsync(string published, int port)
    {
        var bare = await StartAsync(published, port);
        return new CheckingService(bare, "any key", bare);
    }

    public static async Task RunAsync(string[] args)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        var app = builder.Build();
        var padding = new string('x', 200);
        app.MapGet("/health/ready", () => TypedResults.Ok());
        app.MapPost("/v1/price-checks", (Asked asked) => TypedResults.Ok(new Answered(asked.Sku, asked.Channel, asked.Price, padding)));
        app.MapPost("/copy", async (HttpContext context) =>
        {
            context.Features.GetRequiredFeature<IHttpMaxRequestBodySizeFeature>().MaxRequestBodySize = null;
            context.Response.ContentType = "text/csv";
            await context.Request.Body.CopyToAsync(context.Response.Body);
        });
        await app.RunAsync();
    }

    private sealed record Asked(string Sku, string Channel, decimal Price);

    private sealed record Answered(string Sku, string Channel, decimal Price, string Padding);
}
