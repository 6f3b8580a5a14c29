using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

public sealed class RouteTests
{
    [Fact]
    public async Task Every_route_under_v1_says_what_it_is_and_needs_a_scope()
    {
        await using var studio = new Studio();
        foreach (var endpoint in studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.RoutePattern.RawText!.StartsWith("/v1", StringComparison.Ordinal)))
        {
            var told = endpoint.Metadata.GetMetadata<Operation>();
            Assert.True(told is { Id.Length: > 0, Summary.Length: > 0, Description.Length: > 20 }, endpoint.RoutePattern.RawText);
            Assert.NotNull(endpoint.Metadata.GetMetadata<NeedsScope>());
            Assert.Contains(endpoint.Metadata.GetMetadata<NeedsScope>()!.Scope is { } scope ? KeyRing.NameOf(scope) : "any key",
                told.Description.Split("Scope").Last(), StringComparison.Ordinal);
            if (endpoint.Metadata.GetMetadata<BodyMetadata>() is not null)
                Assert.NotNull(told.RequestExample ?? told.Cases[0].Request);
            Assert.Equal(told.Answer is null, told.AnswerExample is null && told.Cases.Count == 0);
        }
    }

    [Fact]
    public async Task Settings_and_problems_are_all_in_the_docs()
    {
        var running = await File.ReadAllTextAsync(Repository.File("docs/running.md"), Studio.Cancellation);
        foreach (var name in PriceFloor.Api.Configuration.Settings.Names.Keys)
            Assert.Contains($"`{name}`", running, StringComparison.Ordinal);
        foreach (var scope in Enum.GetValues<Scope>())
            Assert.Contains($"| `{KeyRing.NameOf(scope)}` |",
                await File.ReadAllTextAsync(Repository.File("docs/integrating.md"), Studio.Cancellation), StringComparison.Ordinal);
        var costs = await File.ReadAllTextAsync(Repository.File("docs/costs-people-forget.md"), Studio.Cancellation);
        foreach (var heading in new[] { "insurance", "repairs", "depreciation", "packaging", "training" })
            Assert.Contains($"`{heading}`", costs, StringComparison.Ordinal);
    }
}
