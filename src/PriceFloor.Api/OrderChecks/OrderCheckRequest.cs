using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.OrderChecks;

/// <summary>Does this order carry the share of all its pieces?</summary>
public sealed record OrderCheckRequest
{
    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>What the buyer pays for; designs of one profile. At least one, unless leastOrder is asked for.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<OrderItemRequest> Items { get; init; } = [];

    /// <summary>What goes with it for nothing.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<OrderGiftRequest> Gifts { get; init; } = [];

    /// <summary>What this buyer is offered: one of its three fields.</summary>
    public Offer? Offer { get; init; }

    /// <summary>
    /// True to be answered also, for each design listed on the channel, from how many pieces on an order of it carries its share under this offer.
    /// Scope: read.
    /// </summary>
    public bool LeastOrder { get; init; }
}

/// <summary>Pieces of one design in an order.</summary>
public sealed record OrderItemRequest
{
    /// <summary>Key or alias of a stored design.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Whole pieces, 1 to 10,000.</summary>
    /// <example>2</example>
    [Pieces(Minimum = "1", Maximum = "10000")]
    public required decimal Pieces { get; init; }

    /// <summary>The price of one in the channel's currency, before the offer; the listed one if absent.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public decimal? Price { get; init; }
}

/// <summary>Pieces of one design that are given away with an order.</summary>
public sealed record OrderGiftRequest
{
    /// <summary>Key or alias of a stored design.</summary>
    /// <example>OR-002</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Whole pieces, 1 to 10,000.</summary>
    /// <example>1</example>
    [Pieces(Minimum = "1", Maximum = "10000")]
    public required decimal Pieces { get; init; }
}

/// <summary>An order has items, and at most one offer.</summary>
public sealed class OrderCheckRequestValidator : AbstractValidator<OrderCheckRequest>
{
    public OrderCheckRequestValidator() => RuleFor(request => request).Custom((request, context) =>
    {
        if (request.Items is { Count: 0 } && !request.LeastOrder)
            context.Add("items", FaultCodes.Required, "An order has at least one item; only leastOrder can be asked for without any.");
        if (request is { Items.Count: 0, Gifts.Count: > 0, LeastOrder: true })
            context.Add("gifts", FaultCodes.Unexpected, "A gift goes with items; give at least one, or leave the gifts out.");
        if (request.Offer is { } offer
                && new[] { offer.DiscountShare, offer.AmountOff, offer.ShippingCharged }.Count(field => field is not null) > 1)
            context.Add("offer", FaultCodes.Contradictory,
                "An offer is one of discountShare, amountOff and shippingCharged; leave the others out.");
    });
}
