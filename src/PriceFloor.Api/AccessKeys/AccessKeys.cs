using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using FluentValidation;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Pricing;
using PriceFloor.Storage;

namespace PriceFloor.Api.AccessKeys;

/// <summary>A key to be made.</summary>
public sealed record KeyRequest
{
    /// <summary>A name for the key: 1 to 64 letters, digits and . _ ~ : + -</summary>
    /// <example>shop-plugin</example>
    [MaxLength(Limits.KeyLength)]
    public required string Name { get; init; }

    /// <summary>What it may do; at least one.</summary>
    [MaxLength(6)]
    public required IReadOnlyList<Scope> Scopes { get; init; }

    /// <summary>When it stops working; absent: never.</summary>
    /// <example>2028-01-01T00:00:00Z</example>
    public DateTimeOffset? Expires { get; init; }
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

    /// <summary>The key itself: shown this once, in the answer that made it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Key { get; init; }

    public static KeyAnswer Of(StoredKey key, string? secret = null) => new()
    {
        Name = key.Name,
        Scopes = [.. KeyRing.ScopesOf(key).Order()],
        CreatedAt = Moment.ToTime(key.CreatedAt),
        Expires = key.ExpiresAt is { } at ? Moment.ToTime(at) : null,
        Key = secret,
    };
}

/// <summary>A page of keys.</summary>
/// <param name="Items">The keys, without their secrets.</param>
/// <param name="Next">What to give as after for the next page; null on the last.</param>
public sealed record KeyPage(IReadOnlyList<KeyAnswer> Items, string? Next);

/// <summary>A key needs a name, a scope, and a time ahead.</summary>
public sealed class KeyRequestValidator : AbstractValidator<KeyRequest>
{
    public KeyRequestValidator(TimeProvider clock)
    {
        RuleFor(request => request.Name).Must(name => name is null || Keys.IsValid(name)).WithErrorCode("bad-key").WithMessage($"name is {Keys.Rule}.");
        RuleFor(request => request.Scopes).Must(scopes => scopes is null || scopes.Count > 0).WithErrorCode("required").WithMessage("Give at least one scope: verdict, check, prices, read, write or admin.");
        RuleFor(request => request.Expires).Must(time => time is null || time > clock.GetUtcNow()).WithErrorCode("out-of-range").WithMessage("expires must be in the future.");
    }
}

/// <summary>A page of keys.</summary>
public sealed record KeyListQuery(int Limit, string? After) : IQuery<KeyListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.Limit, QueryParameters.After];

    public static KeyListQuery Read(QueryValues values) => new(values.Whole("limit", 1, 1000, 100), values.Text("after"));
}
