using System.Text.Json.Serialization;
using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.AccessKeys;

/// <summary>A stored key.</summary>
public sealed record KeyAnswer
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>What it may do.</summary>
    public required IReadOnlyList<StudioScope> Scopes { get; init; }

    /// <summary>True for a key with the scope host, where one service has many studios; absent otherwise.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Host { get; init; }

    /// <summary>When it was made.</summary>
    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>When it stops working; absent if never.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? Expires { get; init; }

    /// <summary>The only cost profiles that it sees; absent if it sees everything.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Profiles { get; init; }

    /// <summary>The minute in which it was last used; absent if not yet.</summary>
    /// <example>2027-01-02T09:00:00.000000Z</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? LastUsed { get; init; }

    /// <summary>Until when the secret before the last rotation works too; absent if it does not.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? PreviousUntil { get; init; }

    /// <summary>The key itself: shown only once, in the answer that made it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Key { get; init; }

    /// <param name="key">The stored key.</param>
    /// <param name="secret">The key itself, if it is new.</param>
    /// <param name="use">When it was used since the service started.</param>
    /// <param name="now">The time of the answer, in microseconds since 1970 UTC.</param>
    public static KeyAnswer Of(StoredKey key, string? secret, KeyUse use, long now) => new()
    {
        Name = key.Name,
        Scopes = [.. KeyRing.ScopesOf(key).Where(scope => scope != Scope.Host).Order().Select(scope => (StudioScope)scope)],
        Host = KeyRing.ScopesOf(key).Contains(Scope.Host),
        CreatedAt = Moment.ToTime(key.CreatedAt),
        Expires = key.ExpiresAt is { } at ? Moment.ToTime(at) : null,
        Profiles = key.Profiles?.Split(' '),
        LastUsed = long.Max(use.At, key.LastUsed ?? 0) is > 0 and var minute ? Moment.ToTime(minute) : null,
        PreviousUntil = key.PreviousUntil is { } until && until > now ? Moment.ToTime(until) : null,
        Key = secret,
    };
}

/// <summary>A page of keys.</summary>
/// <param name="Items">The keys, without their secrets.</param>
/// <param name="Next" example="shop-plugin">Send this as after for the next page; null on the last.</param>
public sealed record KeyPage(IReadOnlyList<KeyAnswer> Items, string? Next);
