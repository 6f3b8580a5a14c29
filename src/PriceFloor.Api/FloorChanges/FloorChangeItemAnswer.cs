using System.Text.Json.Serialization;

namespace PriceFloor.Api.FloorChanges;

/// <summary>A design on a channel whose floor or target price moved.</summary>
public sealed record FloorChangeItemAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code of the channel's prices.</summary>
    public required string Currency { get; init; }

    /// <summary>The floor price then; null if there was none.</summary>
    /// <example>58.05</example>
    public decimal? OldFloorPrice { get; init; }

    /// <summary>The floor price now; null if there is none any more.</summary>
    public decimal? NewFloorPrice { get; init; }

    /// <summary>The target price then.</summary>
    /// <example>112.00</example>
    public decimal? OldTargetPrice { get; init; }

    /// <summary>The target price now.</summary>
    public decimal? NewTargetPrice { get; init; }

    /// <summary>The listed price now; null if there is none.</summary>
    public decimal? ListedPrice { get; init; }

    /// <summary>The verdict on the listed price now.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Whether the listed price still carries its share.</summary>
    public bool? CarriesItsShare { get; init; }

    /// <summary>Why there is no floor price now, such as no-bench-time or currency-mismatch.</summary>
    /// <example>no-bench-time</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>
    /// The documents and fields that moved it, such as "main@8: expenses/3/amount"; "created" and "deleted" for a whole document. Needs the scope
    /// read; absent without it.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? MovedBy { get; init; }
}
