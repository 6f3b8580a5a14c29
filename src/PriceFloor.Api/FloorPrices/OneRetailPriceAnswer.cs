using System.Text.Json.Serialization;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The lowest price that each of several channels allows and that holds on all of them.</summary>
public sealed record OneRetailPriceAnswer
{
    /// <summary>Keys of the retail channels, in the profile's currency, on which the design is listed.</summary>
    public required IReadOnlyList<string> Channels { get; init; }

    /// <summary>The lowest that carries its share on all of them; null with a reason.</summary>
    /// <example>65.00</example>
    public required decimal? FloorPrice { get; init; }

    /// <summary>The lowest that also keeps the studio's own rule; null with a reason.</summary>
    /// <example>120.00</example>
    public required decimal? TargetPrice { get; init; }

    /// <summary>Why there is none: no-price where no price is allowed on all of them.</summary>
    /// <example>no-price</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }
}
