using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using Serilog.Events;
using Serilog.Parsing;

namespace PriceFloor.Api.Telemetry;

/// <summary>The record of a request: one structured line in the log, never a body, a key or a query; and a count, if metrics are on.</summary>
public sealed class RequestRecord(Serilog.ILogger log, ServiceCounts counts, Settings settings, TimeProvider clock)
{
    private static readonly MessageTemplate s_line =
        new MessageTemplateParser().Parse("{RequestMethod:l} {Route:l} {StatusCode} in {Elapsed:0.0} ms, key {KeyName:l}, request {RequestId:l}");

    public async Task Keep(HttpContext context, RequestDelegate next)
    {
        var (method, began, thrown) = (context.Request.Method, clock.GetTimestamp(), (Exception?)null);
        try
        {
            await next(context);
        }
        catch (Exception e)
        {
            thrown = e;
            throw;
        }
        finally
        {
            var elapsed = clock.GetElapsedTime(began);
            if (settings.Metrics)
                Count(context, method, elapsed);
            Tell(context, method, elapsed, thrown);
        }
    }

    private void Count(HttpContext context, string method, TimeSpan elapsed)
    {
        counts.Count(method, RouteOf(context), context.Response.StatusCode, elapsed);
        if (context.Features.Get<Caller>()?.Studio is { } studio)
            counts.CountStudio(studio);
    }

    private void Tell(HttpContext context, string method, TimeSpan elapsed, Exception? thrown)
    {
        var status = thrown is not null && !context.Response.HasStarted ? StatusCodes.Status500InternalServerError : context.Response.StatusCode;
        var fault = thrown ?? (status == StatusCodes.Status500InternalServerError ? context.Features.Get<CaughtFault>()?.Exception : null);
        var level = fault is not null || status == StatusCodes.Status500InternalServerError ? LogEventLevel.Error
            : RouteOf(context).StartsWith("/health", StringComparison.Ordinal) ? LogEventLevel.Debug
            : LogEventLevel.Information;
        if (!log.IsEnabled(level))
            return;
        log.Write(new LogEvent(clock.GetLocalNow(), level, fault, s_line,
        [
            new LogEventProperty("RequestMethod", new ScalarValue(method)),
            new LogEventProperty("Route", new ScalarValue(RouteOf(context))),
            new LogEventProperty("StatusCode", new ScalarValue(status)),
            new LogEventProperty("Elapsed", new ScalarValue(elapsed.TotalMilliseconds)),
            new LogEventProperty("KeyName", new ScalarValue(context.Features.Get<Caller>()?.Account ?? "-")),
            new LogEventProperty("RequestId", new ScalarValue(context.TraceIdentifier)),
        ]));
    }

    private static string RouteOf(HttpContext context) => (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "(none)";
}

/// <summary>The cause of a 500: in the log, never in the answer.</summary>
public sealed record CaughtFault(Exception Exception);
