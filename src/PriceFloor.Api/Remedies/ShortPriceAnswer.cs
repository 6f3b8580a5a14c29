using System.Text.Json.Serialization;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.Remedies;

/// <summary>One listed price that falls short. Money in the profile's currency.</summary>
public sealed record ShortPriceAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>One of the design's other names, if the price is listed under it; absent for the price of the design itself.</summary>
    /// <example>RB-014 blue</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Alias { get; init; }

    /// <summary>Its name for people.</summary>
    public string? Name { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The listed price.</summary>
    public required decimal ListedPrice { get; init; }

    /// <summary>What it does for the year.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The floor on the channel less what reaches the studio, rounded up; 0 where only the target is missed.</summary>
    /// <example>3.65</example>
    public required decimal ShortBy { get; init; }

    /// <summary>The ways that are enough alone: a higher price first, then by the size of the change.</summary>
    public required IReadOnlyList<RemedyAnswer> Remedies { get; init; }

    /// <summary>The revisions that it rests on.</summary>
    public required BasisAnswer Basis { get; init; }
}
