using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>The tax rules that stand in the docs, so that the docs are what the tests check.</summary>
public static class TaxExamples
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    public static TaxRules Us2026Single { get; } = Read("us-2026-single");

    public static TaxRules Uk2025SelfEmployed { get; } = Read("uk-2025-26-self-employed");

    private static TaxRules Read(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "PriceFloor.sln")))
            folder = folder.Parent!;
        return JsonSerializer.Deserialize<TaxRules>(
            File.ReadAllText(Path.Combine(folder.FullName, "docs", "tax-examples", name + ".json")), s_options)!;
    }
}
