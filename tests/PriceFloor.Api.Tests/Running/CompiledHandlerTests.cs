using System.CodeDom.Compiler;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// The compiler generates the code of every handler. One that it cannot follow would be compiled as an expression at each start instead, unnoticed.
/// </summary>
public sealed class CompiledHandlerTests
{
    [Fact]
    public async Task Every_handler_is_made_by_the_compiler()
    {
        await using var studio = new Studio();
        var handlers = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().ToList();

        Assert.NotEmpty(handlers);
        Assert.Empty(handlers.Where(handler => handler.Metadata.GetMetadata<GeneratedCodeAttribute>() is null)
            .Select(handler => handler.RoutePattern.RawText));
    }
}
