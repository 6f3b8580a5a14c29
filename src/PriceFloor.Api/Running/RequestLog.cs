using PriceFloor.Api.Http;
using Serilog;
using Serilog.AspNetCore;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace PriceFloor.Api.Running;

/// <summary>One structured line a request: never a body, never a key, never a query.</summary>
public static class RequestLog
{
    public static void Configure(RequestLoggingOptions options, Serilog.ILogger logger)
    {
        options.Logger = logger;
        options.MessageTemplate = "{RequestMethod:l} {Route:l} {StatusCode} in {Elapsed:0.0} ms, key {KeyName:l}, request {RequestId:l}";
        options.GetMessageTemplateProperties = (context, _, elapsed, status) =>
        [
            new LogEventProperty("RequestMethod", new ScalarValue(context.Request.Method)),
            new LogEventProperty("Route", new ScalarValue((context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "(none)")),
            new LogEventProperty("StatusCode", new ScalarValue(status)),
            new LogEventProperty("Elapsed", new ScalarValue(elapsed)),
            new LogEventProperty("KeyName", new ScalarValue(context.Features.Get<Caller>()?.Name ?? "-")),
            new LogEventProperty("RequestId", new ScalarValue(context.TraceIdentifier)),
        ];
        options.GetLevel = (context, _, fault) =>
            fault is not null || context.Response.StatusCode == 500 ? LogEventLevel.Error
            : (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText?.StartsWith("/health", StringComparison.Ordinal) ?? false ? LogEventLevel.Debug
            : LogEventLevel.Information;
    }

    /// <summary>
    /// The framework's own lines below a warning tell whole addresses, queries included, and somebody may put a key there: they are left out
    /// whatever levels the configuration asks for.
    /// </summary>
    public static void KeepAddressesOut(LoggerConfiguration log) => log.Filter.ByExcluding(line => line.Level < LogEventLevel.Warning
        && line.Properties.TryGetValue("SourceContext", out var source) && source is ScalarValue { Value: string name } && name.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal));

    /// <summary>Text for a terminal, one JSON object a line in a container.</summary>
    public static void Write(LoggerConfiguration log, bool inContainer)
    {
        KeepAddressesOut(log);
        // A start that fails is told once, by Program.cs, in one sentence where the operator can mend it.
        // While anything listens to the host's own diagnostics, it makes an activity and a log scope for every request; our line tells more.
        log.MinimumLevel.Override("Microsoft.AspNetCore.Hosting.Diagnostics", LevelAlias.Off)
            .MinimumLevel.Override("Microsoft.Extensions.Hosting.Internal.Host", LogEventLevel.Fatal)
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning).MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information);
        if (inContainer)
            log.WriteTo.Console(new RenderedCompactJsonFormatter());
        else
            log.WriteTo.Console(outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}", formatProvider: System.Globalization.CultureInfo.InvariantCulture);
    }
}
