using System.Text.Json.Serialization;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The revisions that a floor rests on, such as main@7; "inline" for what came with the request.</summary>
public sealed record BasisAnswer
{
    /// <summary>The profile.</summary>
    public required string Profile { get; init; }

    /// <summary>The design, where the answer is about one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Design { get; init; }

    /// <summary>The channel of a price check.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>The channels of a floor price, in the order of the answer.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Channels { get; init; }

    /// <summary>The listed wholesale price that the target doubles, where it is above the floor.</summary>
    /// <example>RB-014/shops@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? ListedPrice { get; init; }
}
