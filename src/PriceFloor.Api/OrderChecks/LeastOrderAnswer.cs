using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>From what total on an order of one design carries its share, of all designs listed on the channel.</summary>
public sealed record LeastOrderAnswer
{
    /// <summary>
    /// From this total on every order of one design carries its share, except of those in never: the largest least order of more than one piece.
    /// Null if each carries its share alone.
    /// </summary>
    /// <example>84.00</example>
    public decimal? Threshold { get; init; }

    /// <summary>Designs that do not carry their share at their listed price however many are ordered, up to 200.</summary>
    /// <example>["RB-014"]</example>
    public required IReadOnlyList<string> Never { get; init; }

    /// <summary>Each design listed on the channel, in order of key.</summary>
    public required IReadOnlyList<LeastOrderOfDesignAnswer> Designs { get; init; }
}

/// <summary>The least order of one design.</summary>
public sealed record LeastOrderOfDesignAnswer
{
    /// <summary>Key of the design.</summary>
    /// <example>MB-001</example>
    public required string Sku { get; init; }

    /// <summary>Its listed price; null if it is damaged.</summary>
    /// <example>42.00</example>
    public decimal? ListedPrice { get; init; }

    /// <summary>The smallest number of pieces from which on an order carries its share; null if none does, or if reason says why.</summary>
    /// <example>2</example>
    [WholeNumber]
    public decimal? Pieces { get; init; }

    /// <summary>What they come to as listed, before the offer.</summary>
    /// <example>84.00</example>
    public decimal? Total { get; init; }

    /// <summary>Why it cannot be said, such as currency-mismatch or no-bench-time.</summary>
    /// <example>currency-mismatch</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>The revision of the design.</summary>
    /// <example>MB-001@1</example>
    public required string Basis { get; init; }
}
