using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Pricing.Tests;

/// <summary>The documents that the worked figures of orders and runs were calculated with: an hour at the bench must recover 55.988764.</summary>
public static class WorkedStudio
{
    private static readonly JsonSerializerOptions s_options =
        new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) } };

    private static readonly Documents s_documents = Read();

    public static StudioYear Year { get; } = StudioYear.Of(s_documents.Profiles["main"], new DateOnly(2026, 1, 1)).Value;

    public static Channel Web => Channel("web");

    public static Channel Channel(string key) => s_documents.Channels[key];

    public static SellingTerms Terms(string channel) => SellingTerms.Of(Channel(channel)).Value;

    public static UnitCost Piece(string sku) => UnitCost.Of(s_documents.Designs[sku], Year).Value;

    public static decimal PriceOf(string sku, string channel) => s_documents.Prices[$"{sku}/{channel}"].Price;

    /// <summary>An order of pieces at their listed prices.</summary>
    public static OrderItem Item(int pieces, string sku, string channel = "web") => new(Piece(sku), pieces, PriceOf(sku, channel));

    private static Documents Read()
    {
        using var file = typeof(WorkedStudio).Assembly.GetManifestResourceStream(typeof(WorkedStudio), "WorkedStudio.json")!;
        return JsonSerializer.Deserialize<Documents>(file, s_options)!;
    }

    private sealed record Documents(Dictionary<string, CostProfile> Profiles, Dictionary<string, Channel> Channels,
        Dictionary<string, Design> Designs, Dictionary<string, ListedPrice> Prices);
}
