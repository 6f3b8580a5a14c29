using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Quotes;

/// <summary>How far a quote is, for a key that may write quotes and not read them.</summary>
public sealed record QuoteStepAnswer
{
    /// <summary>Its key.</summary>
    /// <example>Q-2027-014</example>
    public required string Key { get; init; }

    /// <summary>Its revision.</summary>
    /// <example>2</example>
    [WholeNumber]
    public required decimal Revision { get; init; }

    /// <summary>When the revision was saved.</summary>
    /// <example>2027-01-02T09:00:00.000000Z</example>
    public required DateTimeOffset SavedAt { get; init; }

    /// <summary>Its state.</summary>
    public required QuoteState State { get; init; }

    /// <summary>When it was issued; absent for a draft.</summary>
    /// <example>2027-01-02T09:00:00.000000Z</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? IssuedAt { get; init; }
}
