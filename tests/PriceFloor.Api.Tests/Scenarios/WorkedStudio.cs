using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests.Scenarios;

/// <summary>The studio of the worked example: what follows from it was computed twice, by hand and by another program.</summary>
internal static class WorkedStudio
{
    /// <summary>Stores its documents, with the year that begins in January 2026.</summary>
    public static async Task<Studio> Create()
    {
        var studio = new Studio();
        await Store(studio, await Documents());
        return studio;
    }

    /// <summary>Its documents by kind and key.</summary>
    public static async Task<JsonNode> Documents()
    {
        var documents = JsonNode.Parse(await File.ReadAllTextAsync(
            Path.Combine(Repository.Root, "tests/PriceFloor.Api.Tests/Scenarios/worked-studio.json"), Studio.Cancellation))!;
        documents["profiles"]!["main"]!["yearStart"] = "2026-01-01";
        return documents;
    }

    public static async Task Store(Studio studio, JsonNode documents)
    {
        foreach (var kind in new[] { "profiles", "channels", "designs" })
            foreach (var (key, document) in documents[kind]!.AsObject())
                await studio.Has($"/v1/{kind}/{key}", document!.ToJsonString());
        foreach (var (key, price) in documents["prices"]!.AsObject())
            await studio.Has($"/v1/designs/{key.Replace("/", "/prices/", StringComparison.Ordinal)}", price!.ToJsonString());
    }
}
