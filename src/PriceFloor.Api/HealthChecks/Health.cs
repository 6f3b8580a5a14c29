using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.HealthChecks;

public static class Health
{
    /// <summary>The process answers.</summary>
    public static JsonAnswer<HealthAnswer> Live(HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        return JsonAnswer.Of(new HealthAnswer("live"));
    }

    /// <summary>The store is open and can be written; anything that prevents this becomes the problem "busy".</summary>
    public static async Task<Results<JsonAnswer<HealthAnswer>, Problem>> Ready(Readiness readiness, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        return await readiness.Look() ? JsonAnswer.Of(new HealthAnswer("ready")) : Problem.Busy();
    }
}

/// <summary>The state of the service.</summary>
/// <param name="Status">"live" or "ready".</param>
public sealed record HealthAnswer(string Status);
