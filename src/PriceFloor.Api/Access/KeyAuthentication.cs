using System.Globalization;
using Microsoft.AspNetCore.Connections.Features;
using Microsoft.Extensions.Primitives;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Access;

/// <summary>
/// Authenticates the key, applies the rate limits, and checks that the key has the scope that the endpoint needs. Refuses everything while the
/// store is closed.
/// </summary>
public sealed class KeyAuthentication(StoreReadiness opening, Store store, KeyRing ring, StoreFreshness freshness, RateLimits limits,
    TimeProvider clock)
{
    private const string OfOneStudio = " No key has it here: this service has one studio, since PRICEFLOOR_STUDIOS is not \"many\".";

    private readonly StringValues _policy = string.Create(CultureInfo.InvariantCulture,
        $"\"default\";q={limits.PerMinute};w={RateLimits.WindowSeconds}");

    public Task LetIn(HttpContext context, RequestDelegate next)
    {
        var needs = context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>();
        if (needs is null)
            return LetIn(context, next, needs, caller: null);
        if (!opening.IsDone)
            return Problem.Busy().ExecuteAsync(context); // the store of an earlier program is being upgraded
        return store.IsShared ? WhenFresh(context, next, needs) : LetInNow(context, next, needs);
    }

    /// <summary>The one place where a request hears what other processes have written before it came.</summary>
    private async Task WhenFresh(HttpContext context, RequestDelegate next, NeedsScope needs)
    {
        var likely = freshness.HasStudios && !KeyIn(context).IsEmpty && ring.LastRead is { } keys ? CallerOf(context, keys)?.Studio : null;
        await freshness.Ask(likely, context);
        await LetInNow(context, next, needs);
    }

    private Task LetInNow(HttpContext context, RequestDelegate next, NeedsScope needs)
    {
        if (KeyIn(context).IsEmpty)
            return LetIn(context, next, needs, caller: null);
        var keys = ring.Keys;
        return keys.IsCompletedSuccessfully
            ? LetIn(context, next, needs, CallerOf(context, keys.Result))
            : WhenRead(keys, context, next, needs);
    }

    private async Task WhenRead(ValueTask<KnownKeys> keys, HttpContext context, RequestDelegate next, NeedsScope needs) =>
        await LetIn(context, next, needs, CallerOf(context, await keys));

    private Task LetIn(HttpContext context, RequestDelegate next, NeedsScope? needs, Caller? caller)
    {
        if (caller is not null)
            context.Features.Set(caller);

        var (allowed, left, reset) = limits.Take(context, caller, store.Processes);
        context.Response.Headers["RateLimit-Policy"] = _policy;
        context.Response.Headers["RateLimit"] = string.Create(CultureInfo.InvariantCulture, $"\"default\";r={left};t={reset}");
        if (!allowed)
            return Problem.TooManyRequests(reset).ExecuteAsync(context);
        return needs is null ? next(context) : Allowed(needs.Scope, caller, context, next);
    }

    private Task Allowed(Scope? needed, Caller? caller, HttpContext context, RequestDelegate next) =>
        caller is null ? Unidentified(context).ExecuteAsync(context)
        : needed is not { } scope || caller.May(scope) ? next(context)
        : Problem.Of(ProblemTypes.KeyNotAllowed, $"This call needs a key with the scope \"{KeyRing.NameOf(scope)}\"."
            + (scope == Scope.Host && !freshness.HasStudios ? OfOneStudio : "")).ExecuteAsync(context);

    private Caller? CallerOf(HttpContext context, KnownKeys keys) =>
        keys.Identify(context.Request.Headers.Authorization.ToString(), KeyIn(context), KeptFor(context), clock.GetUtcNow());

    /// <summary>Only if a connection has one request at a time.</summary>
    private static IDictionary<object, object?>? KeptFor(HttpContext context) =>
        HttpProtocol.IsHttp11(context.Request.Protocol) ? context.Features.Get<IConnectionItemsFeature>()?.Items : null;

    /// <summary>The key that the request sends; empty if it sends none.</summary>
    private static ReadOnlySpan<char> KeyIn(HttpContext context) =>
        context.Request.Headers.Authorization.ToString() is var header && header.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase)
            ? header.AsSpan("Bearer ".Length).Trim()
            : default;

    private Problem Unidentified(HttpContext context)
    {
        if (KeyIn(context) is not { Length: > 0 } key)
            return Problem.Of(ProblemTypes.NoKey, KeyText.HoldsKey(context.Request.QueryString.Value ?? "")
                ? InputFilter.KeyInAddress
                : "The request has no key; send the header \"Authorization: Bearer pf_...\".");
        if (limits.TakeWrongKey(context, store.Processes) is { } wait)
            return Problem.TooManyRequests(wait, "Too many wrong keys came from this address. ");
        return Problem.Of(ProblemTypes.NoKey, KeyText.IsMistyped(key.ToString())
            ? "The key is mistyped or was cut: its last letters do not fit the others. Copy it again."
            : "The key is unknown or has expired.");
    }
}
