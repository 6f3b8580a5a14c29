using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.AccessKeys;

/// <summary>A key to make.</summary>
public sealed record KeyRequest
{
    /// <summary>A name for the key: 1 to 64 letters, digits and . _ ~ : + -</summary>
    /// <example>shop-plugin</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Name { get; init; }

    /// <summary>What it may do; at least one.</summary>
    [MinLength(1), MaxLength(8)]
    public required IReadOnlyList<Scope> Scopes { get; init; }

    /// <summary>When it stops working; never if absent.</summary>
    /// <example>2028-01-01T00:00:00Z</example>
    public DateTimeOffset? Expires { get; init; }

    /// <summary>
    /// Keys of the only cost profiles that it sees, with their designs and listed prices; everything if absent. Not with the scope admin.
    /// </summary>
    [MinLength(1), MaxLength(100)]
    [EachText(1, Limits.KeyLength)]
    public IReadOnlyList<string>? Profiles { get; init; }
}

/// <summary>A key needs a name, a scope, and an expiry in the future.</summary>
public sealed class KeyRequestValidator : AbstractValidator<KeyRequest>
{
    public KeyRequestValidator(TimeProvider clock)
    {
        RuleFor(request => request.Name).Must(name => name is null || Keys.IsValid(name))
            .WithErrorCode("bad-key").WithMessage($"name is {Keys.Rule}.");
        RuleFor(request => request.Expires).Must(time => time is null || time > clock.GetUtcNow())
            .WithErrorCode("out-of-range").WithMessage("expires must be in the future.");
        RuleFor(request => request.Profiles).Must(profiles => profiles is null || profiles.All(Keys.IsValid))
            .WithErrorCode("bad-key").WithMessage($"profiles holds keys of profiles, each {Keys.Rule}; leave it out for all.");
        RuleFor(request => request.Profiles).Must((request, profiles) => profiles is null || request.Scopes?.Contains(Scope.Admin) != true)
            .WithErrorCode("unexpected")
            .WithMessage("An admin key makes keys for everything, so it cannot be limited to some profiles; leave profiles or admin out.");
    }
}
