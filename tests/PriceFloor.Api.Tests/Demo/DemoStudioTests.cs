using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Demo;
using PriceFloor.Api.Tests.Running;
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
            verdicts.AddRange(floor.Json.GetProperty("channels").EnumerateArray()
                .Select(row => row.GetProperty("verdict").GetString()).OfType<string>());
        }

        Assert.True(verdicts.Count(verdict => verdict == "below-floor") >= 2);
        Assert.True(verdicts.Count(verdict => verdict == "below-target") >= 2);
        Assert.Equal("below-floor",
            (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58.00")).Json.GetProperty("verdict").GetString());
    }

    [Fact]
    public void The_greeting_has_three_lines_to_paste()
    {
        var greeting = DemoStudio.Greeting("pf_abc", "elsewhere", "http://127.0.0.1:5080");
        Assert.Equal(3, greeting.Split('\n').Count(line => line.TrimStart().StartsWith("curl ", StringComparison.Ordinal)));
        Assert.Contains("Authorization: Bearer pf_abc", greeting, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_operators_own_key_is_never_printed_and_a_made_one_is()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-demo-").FullName;
        try
        {
            var file = Path.Combine(folder, "key");
            await File.WriteAllTextAsync(file, Studio.AdminKey, Studio.Cancellation);
            var own = await Demo(Path.Combine(folder, "own"), ("PRICEFLOOR_ADMIN_KEY", Studio.AdminKey));
            var filed = await Demo(Path.Combine(folder, "filed"), ("PRICEFLOOR_ADMIN_KEY_FILE", file));
            var made = await Demo(Path.Combine(folder, "made"));
            Assert.Contains("Its key is your own, in PRICEFLOOR_ADMIN_KEY; set KEY to it.", own, StringComparison.Ordinal);
            Assert.Contains($"Its key is your own, in the file {file}; set KEY to it.", filed, StringComparison.Ordinal);
            Assert.All([own, filed], output => Assert.DoesNotContain(Studio.AdminKey, output, StringComparison.Ordinal));
            var key = (await File.ReadAllTextAsync(Path.Combine(folder, "made", "first-admin-key"), Studio.Cancellation)).Trim();
            Assert.Contains($"Its key, shown only this once: {key}", made, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> Demo(string data, params (string Name, string Value)[] settings)
    {
        using var service = RealProgram.Start(data, settings.ToDictionary(setting => setting.Name, setting => setting.Value), "--demo");
        var output = service.Process.StandardOutput.ReadToEndAsync(Studio.Cancellation);
        await RealProgram.Ready(service);
        Assert.Equal(0, await RealProgram.Terminate(service));
        return await output + await service.Process.StandardError.ReadToEndAsync(Studio.Cancellation);
    }
}
