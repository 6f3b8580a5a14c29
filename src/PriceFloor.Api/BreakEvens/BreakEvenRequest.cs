using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.BreakEvens;

/// <summary>A mix: how many of each are sold together.</summary>
public sealed record BreakEvenRequest
{
    /// <summary>Key of the cost profile.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>The lines of the mix; at least one with a ratio above 0.</summary>
    [MinLength(1), MaxLength(Limits.Lines)]
    public required IReadOnlyList<MixLineRequest> Lines { get; init; }

    /// <summary>What the year should leave beyond the need.</summary>
    public Surplus? Surplus { get; init; }
}

/// <summary>One line of the mix.</summary>
public sealed record MixLineRequest : ISaleLine
{
    /// <summary>Key or alias of a stored design.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>The price in the channel's currency; the listed one if absent.</summary>
    /// <example>120.00</example>
    [Price(Above = true)]
    public decimal? Price { get; init; }

    /// <summary>How many in each unit of the mix.</summary>
    /// <example>3</example>
    [Quantity]
    public required decimal Ratio { get; init; }
}

/// <summary>A mix needs a line with a ratio above 0.</summary>
public sealed class BreakEvenRequestValidator : AbstractValidator<BreakEvenRequest>
{
    public BreakEvenRequestValidator() => RuleFor(request => request.Lines)
        .Must(lines => lines is null || lines.Any(line => line?.Ratio > 0))
        .WithErrorCode("required").WithMessage("At least one line needs a ratio above 0.");
}
