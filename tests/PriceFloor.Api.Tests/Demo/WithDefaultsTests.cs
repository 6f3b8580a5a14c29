using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Demo;

/// <summary>
/// The demo studio as it was before the model knew normal use, selling time, usual discounts, losses and one-off work, with the figures that were
/// answered for it then: with their defaults, every figure is still the same. Pieces a year are left out: they now count what the kiln can fire.
/// </summary>
public sealed class WithDefaultsTests
{
    private static string Folder => Path.Combine(Repository.Root, "tests/PriceFloor.Api.Tests/Demo/WithDefaults");

    [Fact]
    public async Task With_its_defaults_what_was_added_to_the_model_changes_no_figure()
    {
        await using var studio = new Studio();
        await Arrange(studio);
        using var figures = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(Folder, "figures.json"), Studio.Cancellation));
        var compared = 0;
        foreach (var answer in figures.RootElement.EnumerateObject())
        {
            var path = answer.Name switch
            {
                "requirement" => "/v1/profiles/main/requirement",
                "priceList" => "/v1/price-list",
                var sku => $"/v1/designs/{sku}/floor-price",
            };
            compared += Same(answer.Value, (await studio.Get(path)).Json, path);
        }

        Assert.True(compared > 900, $"only {compared} figures were compared");
    }

    private static async Task Arrange(Studio studio)
    {
        var documents = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(Folder, "studio.json"), Studio.Cancellation))!;
        documents["profiles"]!["main"]!["yearStart"] = "2026-01-01"; // the year of the answers
        foreach (var kind in new[] { "profiles", "channels", "designs" })
            foreach (var (key, document) in documents[kind]!.AsObject())
                await studio.Has($"/v1/{kind}/{key}", document!.ToJsonString());
        foreach (var (key, price) in documents["prices"]!.AsObject())
            await studio.Has($"/v1/designs/{key.Replace("/", "/prices/", StringComparison.Ordinal)}", price!.ToJsonString());
    }

    /// <summary>Every number and word that was answered then is answered now; how many there are.</summary>
    private static int Same(JsonElement then, JsonElement now, string at)
    {
        if (then.ValueKind == JsonValueKind.Object)
            return then.EnumerateObject().Where(one => one.Name is not ("assumed" or "warnings" or "basis" or "piecesPerYear"))
                .Sum(one => Same(one.Value, now.GetProperty(one.Name), $"{at} {one.Name}"));
        if (then.ValueKind == JsonValueKind.Array)
        {
            Assert.True(then.GetArrayLength() == now.GetArrayLength(), at);
            return then.EnumerateArray().Zip(now.EnumerateArray(), (one, other) => Same(one, other, at)).Sum();
        }

        Assert.True(then.GetRawText() == now.GetRawText(), $"{at}: {then.GetRawText()} then, {now.GetRawText()} now");
        return 1;
    }
}
