using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.AccessKeys;

/// <summary>A key to be made.</summary>
public sealed record KeyRequest
{
    /// <summary>A name for the key: 1 to 64 letters, digits and . _ ~ : + -</summary>
    /// <example>shop-plugin</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Name { get; init; }

    /// <summary>What it may do; at least one.</summary>
    [MinLength(1), MaxLength(6)]
    public required IReadOnlyList<Scope> Scopes { get; init; }

    /// <summary>When it stops working; absent: never.</summary>
    /// <example>2028-01-01T00:00:00Z</example>
    public DateTimeOffset? Expires { get; init; }

    /// <summary>Keys of the only cost profiles that it sees, with their designs and listed prices; absent: everything. Not with the scope admin.</summary>
    [MinLength(1), MaxLength(100)]
    [EachText(1, Limits.KeyLength)]
    public IReadOnlyList<string>? Profiles { get; init; }
}

/// <summary>A key as it is kept.</summary>
public sealed record KeyAnswer
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>What it may do.</summary>
    public required IReadOnlyList<Scope> Scopes { get; init; }

    /// <summary>When it was made.</summary>
    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>When it stops working; absent: never.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? Expires { get; init; }

    /// <summary>The only cost profiles that it sees; absent: everything.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Profiles { get; init; }

    /// <summary>The minute in which it last opened something; absent: not yet.</summary>
    /// <example>2027-01-02T09:00:00.000000Z</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? LastUsed { get; init; }

    /// <summary>How long the key before the last rotation opens as well; absent: it does not.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? PreviousUntil { get; init; }

    /// <summary>The key itself: shown this once, in the answer that made it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Key { get; init; }

    /// <param name="key">The key as it is kept.</param>
    /// <param name="secret">The key itself, where it is new.</param>
    /// <param name="use">When it was used since the start of the service.</param>
    /// <param name="now">The time of the answer, in microseconds since 1970 UTC.</param>
    public static KeyAnswer Of(StoredKey key, string? secret, KeyUse use, long now) => new()
    {
        Name = key.Name,
        Scopes = [.. KeyRing.ScopesOf(key).Order()],
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
/// <param name="Next" example="shop-plugin">What to give as after for the next page; null on the last.</param>
public sealed record KeyPage(IReadOnlyList<KeyAnswer> Items, string? Next);

/// <summary>A key needs a name, a scope, and a time ahead.</summary>
public sealed class KeyRequestValidator : AbstractValidator<KeyRequest>
{
    public KeyRequestValidator(TimeProvider clock)
    {
        RuleFor(request => request.Name).Must(name => name is null || Keys.IsValid(name)).WithErrorCode("bad-key").WithMessage($"name is {Keys.Rule}.");
        RuleFor(request => request.Expires).Must(time => time is null || time > clock.GetUtcNow()).WithErrorCode("out-of-range").WithMessage("expires must be in the future.");
        RuleFor(request => request.Profiles).Must(profiles => profiles is null || profiles.All(Keys.IsValid)).WithErrorCode("bad-key").WithMessage($"profiles holds keys of profiles, each {Keys.Rule}; leave it out for all.");
        RuleFor(request => request.Profiles).Must((request, profiles) => profiles is null || request.Scopes?.Contains(Scope.Admin) != true).WithErrorCode("unexpected").WithMessage("An admin key makes keys for everything, so that it cannot be held to some profiles; leave profiles or admin out.");
    }
}

/// <summary>How long the key that was goes on beside the new one.</summary>
public sealed record KeyRotationQuery(int OverlapHours) : IQuery<KeyRotationQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [new("overlapHours", "So many hours the present key still opens; 0 ends it now.", "integer", Example: "48", Minimum: 0, Maximum: 720, Default: "24")];

    public static KeyRotationQuery Read(QueryValues values) => new(values.Integer("overlapHours", 0, 720, 24));
}

/// <summary>A page of keys.</summary>
public sealed record KeyListQuery(int Limit, string? After) : IQuery<KeyListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.Limit, QueryParameters.After];

    public static KeyListQuery Read(QueryValues values) => new(values.Integer("limit", 1, 1000, 100), values.Text("after"));
}
