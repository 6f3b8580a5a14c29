using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Demo;
using PriceFloor.Api.Tests.Running;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Demo;

/// <summary>Processes that start with --demo at once on one database.</summary>
public sealed class DemoOnServerTests
{
    [Fact]
    public async Task Of_two_that_fill_a_database_at_once_one_does()
    {
        await using var both = new TwoProcesses();
        var filled = await Task.WhenAll(new[] { both.One, both.Other }.Select(studio => Task.Run(() =>
            studio.Services.GetRequiredService<DemoStudio>().Fill(studio.Services.GetRequiredService<Store>()))));
        Assert.Equal([false, true], filled.Order());
        await using var alone = new Studio();
        Assert.True(alone.Services.GetRequiredService<DemoStudio>().Fill(alone.Services.GetRequiredService<Store>()));
        foreach (var path in new[] { "/v1/designs", "/v1/movements", "/v1/designs/RB-014/floor-price" })
            Assert.Equal((await alone.Get(path)).Text, (await both.Other.Get(path)).Text);
    }
}
