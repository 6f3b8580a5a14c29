using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Demo;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Demo;

public sealed class DemoStudioTests
{
    [Fact]
    public async Task The_invented_studio_shows_what_the_service_is_for()
    {
        await using var studio = new Studio();
        _ = studio.ClientWith(null);
        studio.Services.GetRequiredService<DemoStudio>().Fill(studio.Services.GetRequiredService<Store>());

        var designs = (await studio.Get("/v1/designs")).Json.GetProperty("items").EnumerateArray().ToList();
        var channels = (await studio.Get("/v1/channels")).Json.GetProperty("items");
        Assert.True(designs.Count >= 12);
        Assert.Equal(5, channels.GetArrayLength());
        foreach (var kind in new[] { "piecesPerDay", "piecesPerBenchDay", "minutesPerPiece", "steps" })
            Assert.Contains(designs, design => design.GetProperty("making").TryGetProperty(kind, out _));

        var verdicts = new List<string>();
        foreach (var design in designs)
        {
            var floor = await studio.Get($"/v1/designs/{design.GetProperty("key").GetString()}/floor-price");
            Assert.Equal(200, floor.Status);
            verdicts.AddRange(floor.Json.GetProperty("channels").EnumerateArray().Select(row => row.GetProperty("verdict").GetString()).OfType<string>());
        }

        Assert.True(verdicts.Count(verdict => verdict == "below-floor") >= 2);
        Assert.True(verdicts.Count(verdict => verdict == "below-target") >= 2);
        Assert.Equal("below-floor", (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58.00")).Json.GetProperty("verdict").GetString());
    }

    [Fact]
    public void The_greeting_has_three_lines_to_paste()
    {
        var greeting = DemoStudio.Greeting("pf_abc", "data", "http://127.0.0.1:5080");
        Assert.Equal(3, greeting.Split('\n').Count(line => line.TrimStart().StartsWith("curl ", StringComparison.Ordinal)));
        Assert.Contains("Authorization: Bearer pf_abc", greeting, StringComparison.Ordinal);
    }
}
