using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace PriceFloor.Benchmarks;

/// <summary>The limit to measure against: reads a small JSON body and returns 300 bytes; no logging, no keys.</summary>
public static class BareApi
{
    public static async Task RunAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        var app = builder.Build();
        var padding = new string('x', 200);
        app.MapGet("/health/ready", () => TypedResults.Ok());
        app.MapPost("/v1/price-checks", (Asked asked) => TypedResults.Ok(new Answered(asked.Sku, asked.Channel, asked.Price, padding)));
        await app.RunAsync();
    }

    private sealed record Asked(string Sku, string Channel, decimal Price);

    private sealed record Answered(string Sku, string Channel, decimal Price, string Padding);
}
