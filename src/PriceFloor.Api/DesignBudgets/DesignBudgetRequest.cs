using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>What may a new piece take at the price that the market pays? Give either the minutes or the materials.</summary>
public sealed record DesignBudgetRequest
{
    /// <summary>Key of the cost profile that the piece must carry.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>The price that the market pays, as listed, in the channel's currency.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public required decimal Price { get; init; }

    /// <summary>Bench minutes for each sold piece; give either these or materials.</summary>
    /// <example>90</example>
    [Quantity(Above = true)]
    public decimal? Minutes { get; init; }

    /// <summary>Materials for each sold piece, in the profile's currency; give either these or minutes.</summary>
    /// <example>6.00</example>
    [Money]
    public decimal? Materials { get; init; }
}

/// <summary>One of the two is given, the other is answered.</summary>
public sealed class DesignBudgetRequestValidator : AbstractValidator<DesignBudgetRequest>
{
    public DesignBudgetRequestValidator() => RuleFor(request => request).Custom((request, context) =>
    {
        if (context.IsSound("/minutes", "/materials") && request.Minutes is null == request.Materials is null)
            context.Add("", FaultCodes.ExactlyOne, "Give either minutes (then the materials are answered) or materials (then the minutes are).");
    });
}
