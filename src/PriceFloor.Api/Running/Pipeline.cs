using Microsoft.AspNetCore.Http.Features;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Telemetry;

namespace PriceFloor.Api.Running;

/// <summary>What happens to every request before and after its handler, in order.</summary>
public static class Pipeline
{
    public static void UseRequestPipeline(this WebApplication app)
    {
        var services = app.Services;
        var settings = services.GetRequiredService<Settings>();
        if (settings.TrustedProxies.Count > 0)
            app.UseForwardedHeaders(settings.TrustedProxies.Headers);
        if (settings.PathBase.Length > 0)
            app.Use(Below(settings.PathBase));
        app.Use(Named(services));
        app.Use(services.GetRequiredService<RequestRecord>().Keep);
        app.Use(HeadAsGet);
        app.Use(FaultsAsProblems.Answer);
        app.UseRouting();
        app.Use(Retirement.Tell);
        if (settings.CorsOrigins.Count > 0)
            app.UseCors();
        app.Use(services.GetRequiredService<KeyAuthentication>().LetIn);
        if (settings.HasManyStudios)
            app.Use(services.GetRequiredService<Studios>().InStudio);
        app.Use(RequireAcceptable);
    }

    /// <summary>
    /// All addresses in answers start with the base, whether the proxy before us leaves it on the requests or removes it. It stays for the whole
    /// request, so a problem that is written last has it too.
    /// </summary>
    private static Func<HttpContext, RequestDelegate, Task> Below(PathString pathBase) => (context, next) =>
    {
        if (context.Request.Path.StartsWithSegments(pathBase, StringComparison.Ordinal, out var rest))
            context.Request.Path = rest;
        context.Request.PathBase = pathBase;
        return next(context);
    };

    /// <summary>Gives the request its name and the headers of every answer.</summary>
    private static Func<HttpContext, RequestDelegate, Task> Named(IServiceProvider services)
    {
        var clock = services.GetRequiredService<TimeProvider>();
        // every service lives as long as the process, so no request needs its own scope
        var forAll = new ServiceProvidersFeature { RequestServices = services };
        return (context, next) =>
        {
            context.Features.Set<IServiceProvidersFeature>(forAll);
            context.TraceIdentifier = RequestIds.Next(clock);
            context.Response.Headers["X-Request-Id"] = context.TraceIdentifier;
            SecurityHeaders.Add(context);
            return next(context);
        };
    }

    /// <summary>HEAD works wherever GET does: the same answer, headers and length, without its body.</summary>
    private static Task HeadAsGet(HttpContext context, RequestDelegate next) =>
        HttpMethods.IsHead(context.Request.Method) ? WithoutBody(context, next) : next(context);

    private static async Task WithoutBody(HttpContext context, RequestDelegate next)
    {
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

    /// <summary>Endpoints that need a key answer in the formats that they offer: JSON by default.</summary>
    private static Task RequireAcceptable(HttpContext context, RequestDelegate next)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>() is null)
            return next(context);
        var offers = Offers.Of(context);
        if (offers.Formats.Count > 1)
            context.Response.Headers.Append("Vary", "Accept"); // beside what CORS says there
        return offers.Wanted(context.Request) is not null
            ? next(context)
            : Problem.Of(ProblemTypes.NotAcceptable, $"This address answers {string.Join(", ", offers.Formats.Select(format => format.MediaType))}.")
                .ExecuteAsync(context);
    }
}
