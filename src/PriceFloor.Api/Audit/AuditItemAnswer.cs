using System.Text.Json.Serialization;
using PriceFloor.Storage;

namespace PriceFloor.Api.Audit;

/// <summary>Who did what, and when: names of keys and documents, never their contents.</summary>
public sealed record AuditItemAnswer
{
    /// <summary>When.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Name of the key that did it; "command line" for a verb, "timed backup" for a scheduled backup.</summary>
    /// <example>shop-plugin</example>
    public required string By { get; init; }

    /// <summary>What was done.</summary>
    public required AuditAction Action { get; init; }

    /// <summary>The kind of thing: profile, design, channel, price, reading-rules, key, or store for all of it.</summary>
    /// <example>price</example>
    public required string Kind { get; init; }

    /// <summary>
    /// The document's key (for a listed price, its design's and its channel's), the key's name, or the name of the backup's file; absent if a
    /// document was forgotten.
    /// </summary>
    /// <example>RB-014/web</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Key { get; init; }

    /// <summary>The revision that it made; only for documents.</summary>
    /// <example>3</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Revision { get; init; }

    public static AuditItemAnswer Of(AuditEntry entry) => new()
    {
        At = Moment.ToTime(entry.At),
        By = entry.By,
        Action = Enum.Parse<AuditAction>(entry.What.Replace("-", "", StringComparison.Ordinal), ignoreCase: true),
        Kind = entry.Kind,
        Key = entry.Key is { Length: > 0 } key ? key : null,
        Revision = entry.Number > 0 ? entry.Number : null,
    };
}

/// <summary>A page of the trail, newest first.</summary>
/// <param name="Items">The changes.</param>
/// <param name="Next" example="9223372036854775807.3">Send this as after for the next page; null on the last.</param>
public sealed record AuditPage(IReadOnlyList<AuditItemAnswer> Items, string? Next);
