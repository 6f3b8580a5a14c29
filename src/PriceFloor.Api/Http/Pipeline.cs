using System.Globalization;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Running;
using Serilog;

namespace PriceFloor.Api.Http;

/// <summary>What happens to every request before and after its handler, in order.</summary>
public static class Pipeline
{
    private const int BusyErrors = 5, Locked = 6, ReadOnly = 8, InputOutput = 10, Full = 13, CannotOpen = 14, Corrupt = 11, NotADatabase = 26;

    public static void UseRequestPipeline(this WebApplication app)
    {
        var settings = app.Services.GetRequiredService<Settings>();
        if (settings.TrustedProxies.Count > 0)
            app.UseForwardedHeaders(settings.ForwardedHeaders);
        if (settings.PathBase.Length > 0)
            app.Use(Below(settings.PathBase));
        if (settings.Metrics)
            app.Use(app.Services.GetRequiredService<ServiceCounts>().CountRequest);
        app.Use((context, next) =>
        {
            context.RequestServices = app.Services; // every service lives as long as the process, so that no request needs a scope of its own
            return next(context);
        });
        app.Use(AnswerHeaders);
        app.UseSerilogRequestLogging(options => RequestLog.Configure(options, app.Services.GetRequiredService<Serilog.ILogger>()));
        app.Use(HeadAsGet);
        app.Use(FaultsAsProblems);
        app.Use(EmptyErrorsAsProblems);
        app.UseRouting();
        app.Use(Retirement.Tell);
        if (settings.CorsOrigins.Count > 0)
            app.UseCors();
        app.Use(WaitForTheStore);
        app.Use(IdentifyCaller);
        app.Use(LimitRate);
        app.Use(RequireScope);
        app.Use(RequireAcceptable);
    }

    /// <summary>
    /// All addresses that are told start with the base, whether the proxy before us leaves it on the requests or takes it off. It stays for the
    /// whole request, so that a problem that is written last tells it too.
    /// </summary>
    private static Func<HttpContext, RequestDelegate, Task> Below(PathString pathBase) => (context, next) =>
    {
        if (context.Request.Path.StartsWithSegments(pathBase, StringComparison.Ordinal, out var rest))
            context.Request.Path = rest;
        context.Request.PathBase = pathBase;
        return next(context);
    };

    private static Task AnswerHeaders(HttpContext context, RequestDelegate next)
    {
        context.TraceIdentifier = Guid.CreateVersion7().ToString("N"); // in order of time, so that the log can be searched by them
        context.Response.Headers["X-Request-Id"] = context.TraceIdentifier;
        SecurityHeaders.Add(context);
        return next(context);
    }

    private static async Task FaultsAsProblems(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The caller has gone; there is nobody to answer.
        }
        catch (Exception e) when (!context.Response.HasStarted && ProblemOf(e) is { } problem)
        {
            if (problem.Type == ProblemTypes.Internal)
                context.RequestServices.GetRequiredService<IDiagnosticContext>().SetException(e);
            else if (e is SqliteException { SqliteErrorCode: Corrupt or NotADatabase })
                Log.Error("The store is damaged: {Message} Stop the service, run check-store, and restore a backup", e.Message);
            else if (problem.Type == ProblemTypes.Busy)
                Log.Warning("The store answered {Message}", e.Message);
            context.Response.Headers.ETag = default;
            context.Response.ContentLength = null;
            await problem.ExecuteAsync(context);
        }
    }

    private static Problem ProblemOf(Exception fault) => fault switch
    {
        SqliteException { SqliteErrorCode: BusyErrors or Locked or ReadOnly or InputOutput or Full or CannotOpen or Corrupt or NotADatabase } => Problem.Busy(),
        BadHttpRequestException { StatusCode: 413 } => Problem.Of(ProblemTypes.TooLarge),
        BadHttpRequestException bad => Problem.Unreadable(new InputError { Pointer = "#", Code = "malformed", Detail = $"The request broke off or is not HTTP ({bad.StatusCode})." }),
        _ => Problem.Of(ProblemTypes.Internal),
    };

    private static async Task EmptyErrorsAsProblems(HttpContext context, RequestDelegate next)
    {
        await next(context);
        var response = context.Response;
        if (response.HasStarted || response.StatusCode < 400 || response.ContentType is not null)
            return;

        if (response.Headers.Allow is { Count: > 0 } allow && allow.ToString().Contains("GET", StringComparison.Ordinal) && !allow.ToString().Contains("HEAD", StringComparison.Ordinal))
            response.Headers.Allow = allow + ", HEAD";
        var type = ProblemTypes.All.FirstOrDefault(type => type.Status == response.StatusCode) ?? ProblemTypes.Internal;
        var detail = type == ProblemTypes.NotFound ? "No such address; / says where to begin, /openapi/v1.json lists the paths." : type.Meaning;
        await Problem.Of(type, detail).ExecuteAsync(context);
    }

    /// <summary>HEAD works wherever GET does: the same answer, headers and length, without its body.</summary>
    private static async Task HeadAsGet(HttpContext context, RequestDelegate next)
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        var body = context.Features.GetRequiredFeature<IHttpResponseBodyFeature>();
        context.Request.Method = HttpMethods.Get;
        context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(Stream.Null, body));
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
            context.Features.Set(body);
        }
    }

    /// <summary>While an earlier program's store is brought up to date, whatever needs it is told to come again.</summary>
    private static Task WaitForTheStore(HttpContext context, RequestDelegate next) =>
        context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>() is null || context.RequestServices.GetRequiredService<Opening>().IsDone ? next(context) : Problem.Busy().ExecuteAsync(context);

    private static Task IdentifyCaller(HttpContext context, RequestDelegate next)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>() is not null && KeyIn(context) is { } key)
            context.Features.Set(context.RequestServices.GetRequiredService<KeyRing>().Identify(key));
        return next(context);
    }

    private static string? KeyIn(HttpContext context) =>
        context.Request.Headers.Authorization.ToString() is var header && header.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) ? header["Bearer ".Length..].Trim() : null;

    private static Task LimitRate(HttpContext context, RequestDelegate next)
    {
        var limits = context.RequestServices.GetRequiredService<RateLimits>();
        var (allowed, left, reset) = limits.Take(context);
        context.Response.Headers["RateLimit-Policy"] = string.Create(CultureInfo.InvariantCulture, $"\"default\";q={limits.PerMinute};w=60");
        context.Response.Headers["RateLimit"] = string.Create(CultureInfo.InvariantCulture, $"\"default\";r={left};t={reset}");
        return allowed ? next(context) : Problem.TooManyRequests(reset).ExecuteAsync(context);
    }

    private static Task RequireScope(HttpContext context, RequestDelegate next)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>() is not { Scope: var scope })
            return next(context);
        if (context.Features.Get<Caller>() is not { } caller)
            return Unidentified(context).ExecuteAsync(context);
        return caller.May(scope) ? next(context)
            : Problem.Of(ProblemTypes.KeyNotAllowed, $"This call needs a key with the scope \"{KeyRing.Word(scope)}\".").ExecuteAsync(context);
    }

    private static Problem Unidentified(HttpContext context)
    {
        if (KeyIn(context) is not { Length: > 0 } key)
            return Problem.Of(ProblemTypes.NoKey, KeyText.HoldsKey(context.Request.QueryString.Value ?? "") ? InputFilter.KeyInAddress : "The request has no key; send the header \"Authorization: Bearer pf_...\".");
        if (context.RequestServices.GetRequiredService<RateLimits>().TakeWrongKey(context) is { } wait)
            return Problem.TooManyRequests(wait, "Too many wrong keys came from this address. ");
        return Problem.Of(ProblemTypes.NoKey, KeyText.IsMistyped(key) ? "The key is mistyped or was cut: its last letters do not fit the others. Copy it anew." : "The key is not known here or has expired.");
    }

    /// <summary>Endpoints that need a key answer in the formats that they offer: JSON where they say nothing else.</summary>
    private static Task RequireAcceptable(HttpContext context, RequestDelegate next)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>() is null)
            return next(context);
        var offers = Offers.Of(context);
        if (offers.Formats.Count > 1)
            context.Response.Headers.Append("Vary", "Accept"); // beside what CORS says there
        return offers.Wanted(context.Request) is not null
            ? next(context)
            : Problem.Of(ProblemTypes.NotAcceptable, $"This address answers {string.Join(", ", offers.Formats.Select(format => format.MediaType))}.").ExecuteAsync(context);
    }
}
