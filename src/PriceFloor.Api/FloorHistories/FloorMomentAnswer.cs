using System.Text.Json.Serialization;

namespace PriceFloor.Api.FloorHistories;

/// <summary>The prices of a design on a channel from a moment on. Money in the channel's currency.</summary>
public sealed record FloorMomentAnswer
{
    /// <summary>The start of these prices.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The smallest allowed price whose net reached the floor; null with a reason.</summary>
    public decimal? FloorPrice { get; init; }

    /// <summary>The lowest price that also did not undercut shops that buy to sell on: the profile's priceRule.</summary>
    public decimal? TargetPrice { get; init; }

    /// <summary>The listed price; null if there was none.</summary>
    public decimal? ListedPrice { get; init; }

    /// <summary>The verdict on the listed price.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Why there was no price: not-stored, currency-mismatch, no-price, ...</summary>
    /// <example>not-stored</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>The documents that were written at that moment.</summary>
    public required IReadOnlyList<string> MovedBy { get; init; }

    /// <summary>What changed in them, in words: each figure with what it was and what it is, by the name of what it belongs to.</summary>
    public required IReadOnlyList<string> Changed { get; init; }

    /// <summary>The revisions that the prices rested on.</summary>
    public required IReadOnlyList<string> Basis { get; init; }
}
