using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace PriceFloor.Api.Telemetry;

/// <summary>Where the log goes, and what must never be in it.</summary>
public static class RequestLog
{
    private const string Host = "Microsoft.Extensions.Hosting.Internal.Host";

    /// <summary>
    /// The framework's own lines below a warning contain whole addresses, queries included, and somebody may put a key there: they are left out
    /// whatever level is configured.
    /// </summary>
    public static void KeepAddressesOut(LoggerConfiguration log) => log.Filter.ByExcluding(line => line.Level < LogEventLevel.Warning
        && SourceOf(line).StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal));

    /// <summary>Work beside the service that was cancelled because the service could not start is not the reason for that.</summary>
    public static void KeepCalledOffWorkOut(LoggerConfiguration log) =>
        log.Filter.ByExcluding(line => line.Exception is OperationCanceledException && SourceOf(line) == Host);

    /// <summary>Text for a terminal, one JSON object a line in a container.</summary>
    public static void Write(LoggerConfiguration log, bool inContainer)
    {
        KeepAddressesOut(log);
        KeepCalledOffWorkOut(log);
        // A failed start is reported once, by Program.cs, in one sentence if the operator can fix it.
        // While anything listens to the host's own diagnostics, it makes an activity and a log scope for every request; our line has more.
        log.MinimumLevel.Override("Microsoft.AspNetCore.Hosting.Diagnostics", LevelAlias.Off)
            .MinimumLevel.Override(Host, LogEventLevel.Fatal)
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning).MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information);
        if (inContainer)
            log.WriteTo.Console(new RenderedCompactJsonFormatter());
        else
            log.WriteTo.Console(outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}",
                formatProvider: System.Globalization.CultureInfo.InvariantCulture);
    }

    private static string SourceOf(LogEvent line) =>
        line.Properties.TryGetValue("SourceContext", out var source) && source is ScalarValue { Value: string name } ? name : "";
}
