using System.Diagnostics;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>Before the first answer only that is made which the first answers need.</summary>
public sealed class LateHandlerTests
{
    [Fact]
    public async Task The_way_for_price_checks_is_made_beside_the_start_and_other_handlers_when_they_are_first_asked()
    {
        await using var studio = new Studio();
        var waiting = Stopwatch.StartNew();
        while (!IsMade(studio, "/v1/price-checks"))
        {
            Assert.True(waiting.Elapsed < TimeSpan.FromSeconds(30), "Nobody made the handlers of price checks.");
            await Task.Delay(10, Studio.Cancellation);
        }

        Assert.False(IsMade(studio, "/v1/year-plans"));
        (await studio.Post("/v1/year-plans", "{}")).IsProblem(422, "invalid-input");
        Assert.True(IsMade(studio, "/v1/year-plans"));
        Assert.False(IsMade(studio, "/v1/year-plans/best"));
    }

    private static bool IsMade(Studio studio, string path) => studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        .Where(endpoint => endpoint.RoutePattern.RawText == path).All(endpoint => endpoint.Metadata.GetRequiredMetadata<LateHandler>().IsMade);
}
