using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>How the service is.</summary>
/// <param name="Status">"live" or "ready".</param>
public sealed record HealthAnswer(string Status);

public static class Health
{
    /// <summary>The process answers.</summary>
    public static Ok<HealthAnswer> Live(HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Ok(new HealthAnswer("live"));
    }

    /// <summary>The store can be read; what stands against it becomes the problem "busy".</summary>
    public static Results<Ok<HealthAnswer>, Problem> Ready(Store store, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        return store.Read(snapshot => snapshot.Keys.Count > 0) ? TypedResults.Ok(new HealthAnswer("ready")) : Problem.Busy();
    }
}
