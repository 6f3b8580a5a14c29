using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Markups;

/// <summary>
/// Any two of cost, price, markup, margin and profit. With a chain: the maker's cost or the buyer's price, and the sellers between. With discounts:
/// the list price or the net price, and the rates.
/// </summary>
public sealed record MarkupRequest
{
    /// <summary>ISO 4217 code that sets the decimals of the answer; two decimals without it.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Limits.CurrencyPattern)]
    public string? Currency { get; init; }

    /// <summary>The cost of the piece (with a chain: what the first seller pays).</summary>
    /// <example>60.00</example>
    [Money]
    public decimal? Cost { get; init; }

    /// <summary>The price of the piece (with a chain: what the last seller asks).</summary>
    /// <example>120.00</example>
    [Money]
    public decimal? Price { get; init; }

    /// <summary>Profit over cost.</summary>
    /// <example>1</example>
    [Share(Minimum = "-1", Maximum = "1000000")]
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; at most 1.</summary>
    /// <example>0.5</example>
    [Share(Minimum = "-1000000")]
    public decimal? Margin { get; init; }

    /// <summary>Price less cost.</summary>
    /// <example>60.00</example>
    [Money(Minimum = "-1000000000000")]
    public decimal? Profit { get; init; }

    /// <summary>Tax in the price or on top of it: markup and margin are always before tax.</summary>
    public SalesTax? SalesTax { get; init; }

    /// <summary>The sellers from maker to buyer, in order.</summary>
    [MaxLength(20)]
    public IReadOnlyList<ChainStep> Chain { get; init; } = [];

    /// <summary>A series of trade discounts.</summary>
    public DiscountRequest? Discounts { get; init; }

    /// <summary>The known values, as given.</summary>
    internal MarkupValues Asked => new(Cost, Price, Markup, Margin, Profit);

    /// <summary>The known values, before tax.</summary>
    internal MarkupValues Values => Asked.BeforeTax(SalesTax);
}

/// <summary>A series of trade discounts on a list price, or back from a net price.</summary>
public sealed record DiscountRequest
{
    /// <summary>The list price; either this or net.</summary>
    /// <example>140.00</example>
    [Money]
    public decimal? List { get; init; }

    /// <summary>The net price; either this or list.</summary>
    /// <example>50.00</example>
    [Money]
    public decimal? Net { get; init; }

    /// <summary>The rates in order, each applied to what the one before leaves.</summary>
    [MaxLength(20)]
    [Share(Maximum = "0.9999")]
    public required IReadOnlyList<decimal> Rates { get; init; }
}

/// <summary>Enough values to compute with, and none twice.</summary>
public sealed class MarkupRequestValidator : AbstractValidator<MarkupRequest>
{
    public MarkupRequestValidator()
    {
        RuleFor(request => request.Currency).Must(code => code is null || Currency.Find(code) is not null)
            .WithErrorCode("unknown-currency").WithMessage("currency must be an ISO 4217 code in capitals, such as USD.");
        RuleFor(request => request).Custom((request, context) =>
        {
            if (request.Chain.Count > 0)
                ChainFaults(request, context);
            else if (request.Values.Known < 2 && (request.Discounts is null || request.Values.Known == 1))
                context.Add("", FaultCodes.Required,
                    "Give two of cost, price, markup, margin and profit (or discounts, or a chain with a cost or a price).");
            foreach (var (index, step) in request.Chain.Index())
                if (new[] { step.Markup, step.Margin, step.Multiple }.Count(value => value is not null) != 1)
                    context.Add($"chain/{index}", FaultCodes.ExactlyOne, "A step must have exactly one of markup, margin and multiple.");
            if (request.Discounts is { } discounts && discounts.List is not null == discounts.Net is not null)
                context.Add("discounts", FaultCodes.ExactlyOne, "Give either the list price or the net price.");
        });
    }

    private static void ChainFaults(MarkupRequest request, ValidationContext<MarkupRequest> context)
    {
        if (request.Cost is not null == request.Price is not null)
            context.Add("chain", FaultCodes.ExactlyOne, "A chain starts from the maker's cost or from the buyer's price: give exactly one.");
        foreach (var (name, value) in new[] { ("markup", request.Markup), ("margin", request.Margin), ("profit", request.Profit) })
            if (value is not null)
                context.Add(name, FaultCodes.Unexpected, $"With a chain, each step has its own; leave {name} out.");
    }
}
