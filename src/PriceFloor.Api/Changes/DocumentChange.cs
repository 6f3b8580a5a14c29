using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>
/// A number, text or line that may be other than stored: one document of the request (or every one of a kind), a place in it, and what happens there.
/// Exactly one of <c>to</c>, <c>by</c>, <c>plus</c>, <c>remove</c> and <c>merge</c>.
/// </summary>
public sealed record DocumentChange
{
    /// <summary>How long <c>of</c> may be: a kind, a design and a channel.</summary>
    public const int LongestOf = (2 * Limits.KeyLength) + 20;

    /// <summary>How long a pointer may be.</summary>
    public const int LongestAt = 1000;

    /// <summary>
    /// The document: <c>profile:main</c>, <c>plan:2027</c>, <c>design:RB-014</c>, <c>channel:web</c>, <c>price:RB-014/web</c>. The kind may be left
    /// out where one document of the request has the key. <c>design:*</c> and <c>price:*/web</c> are every one of them.
    /// </summary>
    /// <example>main</example>
    [MaxLength(LongestOf)]
    public required string Of { get; init; }

    /// <summary>
    /// JSON Pointer (RFC 6901) to the place. Inside lists a token is an index, the name of an item (or its material or channel), <c>*</c> for every
    /// item, or <c>-</c>, last and with <c>to</c>, to add an item. Not with <c>merge</c>.
    /// </summary>
    /// <example>/expenses/Bench rent/amount</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [MaxLength(LongestAt)]
    public string? At { get; init; }

    /// <summary>The new value, or for a number a range of <c>low</c>, <c>likely</c> and <c>high</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public AnyJson? To { get; init; }

    /// <summary>The number is multiplied by this.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public NumberOr<NumberRange>? By { get; init; }

    /// <summary>This is added to the number.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public NumberOr<NumberRange>? Plus { get; init; }

    /// <summary>True takes out a line of a list, or gives a property its default back.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Remove { get; init; }

    /// <summary>A JSON Merge Patch (RFC 7396) for the whole document: lists are replaced, null gives a default back.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public AnyJson? Merge { get; init; }

    /// <summary>With a range: <c>never</c> if its low and high are never passed.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RangeEnds? Ends { get; init; }

    /// <summary>With a range: ranges of one such name move together.</summary>
    /// <example>glass</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [MaxLength(Limits.KeyLength)]
    public string? Together { get; init; }
}
