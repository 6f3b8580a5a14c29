using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Running;
using PriceFloor.Api.Telemetry;
using Serilog;
using Serilog.Core;
using Serilog.Events;

namespace PriceFloor.Api.Tests;

/// <summary>Everything that the service logs, down to the most verbose level.</summary>
internal sealed class CapturedLog : ILogEventSink
{
    public List<string> Lines { get; } = [];

    public void Emit(LogEvent logEvent)
    {
        lock (Lines)
            Lines.Add($"{logEvent.RenderMessage(null)} {string.Join(' ', logEvent.Properties.Select(property => property.ToString()))} "
                + $"{logEvent.Exception}");
    }

    /// <summary>Makes a service write here instead of to the console.</summary>
    public void Of(IWebHostBuilder host) => host.ConfigureTestServices(services => services.AddSerilog(write =>
    {
        RequestLog.KeepAddressesOut(write);
        write.MinimumLevel.Verbose().WriteTo.Sink(this);
    }));
}
