using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests;

/// <summary>
/// The studio of the worked examples: what follows from it was computed twice, by hand and by another program. An hour must recover 55.988764.
/// </summary>
internal static class WorkedStudio
{
    /// <summary>A service that has its documents.</summary>
    public static async Task<Studio> Create()
    {
        var studio = new Studio();
        await studio.HasTheWorkedStudio();
        return studio;
    }

    /// <summary>Its documents by kind and key, with the year that begins in January 2026.</summary>
    public static async Task<JsonNode> Documents()
    {
        var documents = JsonNode.Parse(await File.ReadAllTextAsync(Repository.File("tests/PriceFloor.Pricing.Tests/WorkedStudio.json"),
            Studio.Cancellation))!;
        foreach (var (_, profile) in documents["profiles"]!.AsObject())
            profile!["yearStart"] = "2026-01-01";
        return documents;
    }

    /// <summary>Stores them all.</summary>
    public static async Task HasTheWorkedStudio(this Studio studio) => await Store(studio, await Documents());

    public static async Task Store(Studio studio, JsonNode documents)
    {
        foreach (var kind in new[] { "profiles", "channels", "designs" })
            foreach (var (key, document) in documents[kind]!.AsObject())
                await studio.Has($"/v1/{kind}/{key}", document!.ToJsonString());
        foreach (var (key, price) in documents["prices"]!.AsObject())
            await studio.Has($"/v1/designs/{key.Replace("/", "/prices/", StringComparison.Ordinal)}", price!.ToJsonString());
    }
}
