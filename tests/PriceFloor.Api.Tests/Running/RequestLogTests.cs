using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http.Reading;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

public sealed class RequestLogTests
{
    [Fact]
    public async Task One_line_a_request_with_its_id_and_never_a_key_a_query_or_a_body()
    {
        var lines = new Lines();
        await using var studio = new Studio(configure: host => host.ConfigureTestServices(services =>
            services.AddSerilog(log => log.MinimumLevel.Information().MinimumLevel.Override("Microsoft", LogEventLevel.Fatal).WriteTo.Sink(lines))));
        await studio.HasASmallShop();
        lines.Events.Clear();

        var answer = await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58.00");
        await studio.Put("/v1/profiles/main", """{"name":"private household"}""");

        Assert.Equal(2, lines.Events.Count);
        string Value(string name) => lines.Events[0].Properties[name].ToString(null, CultureInfo.InvariantCulture).Trim('"');
        Assert.Equal(("GET", "/v1/price-checks", "200", "first-admin-key", answer["X-Request-Id"]),
            (Value("RequestMethod"), Value("Route"), Value("StatusCode"), Value("KeyName"), Value("RequestId")));
        var all = string.Join('\n',
            lines.Events.Select(line => line.RenderMessage() + string.Join(' ', line.Properties.Select(property => property.ToString()))));
        foreach (var secret in new[] { Studio.AdminKey, "58.00", "RB-014", "private household" })
            Assert.DoesNotContain(secret, all, StringComparison.Ordinal);
    }

    private sealed class Lines : ILogEventSink
    {
        public List<LogEvent> Events { get; } = [];

        public void Emit(LogEvent logEvent)
        {
            lock (Events)
                Events.Add(logEvent);
        }
    }
}
