using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests;

/// <summary>The documents that the worked examples of orders and runs were calculated with: an hour must recover 55.988764.</summary>
internal static class WorkedStudio
{
    private const string File = "tests/PriceFloor.Pricing.Tests/WorkedStudio.json";

    /// <summary>Stores them all.</summary>
    public static async Task HasTheWorkedStudio(this Studio studio)
    {
        var documents = JsonNode.Parse(await System.IO.File.ReadAllTextAsync(Repository.File(File), Studio.Cancellation))!.AsObject();
        foreach (var (key, profile) in documents["profiles"]!.AsObject())
        {
            profile!["yearStart"] = "2026-01-01";
            await studio.Has($"/v1/profiles/{key}", profile.ToJsonString());
        }

        foreach (var kind in new[] { "channels", "designs" })
            foreach (var (key, document) in documents[kind]!.AsObject())
                await studio.Has($"/v1/{kind}/{key}", document!.ToJsonString());
        foreach (var (key, price) in documents["prices"]!.AsObject())
            await studio.Has($"/v1/designs/{key.Replace("/", "/prices/", StringComparison.Ordinal)}", price!.ToJsonString());
    }
}
