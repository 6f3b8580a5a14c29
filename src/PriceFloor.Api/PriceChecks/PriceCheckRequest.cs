using System.ComponentModel.DataAnnotations;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.PriceChecks;

/// <summary>Does this price carry its part of the year?</summary>
public sealed record PriceCheckRequest
{
    /// <summary>Key or alias of a stored design.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>The price as it is or would be listed, above 0, with the decimals of the channel's currency.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public required decimal Price { get; init; }

    /// <summary>ISO 4217 code of the price; the channel's if absent. A code other than the channel's is refused.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Limits.CurrencyPattern)]
    public string? Currency { get; init; }
}

/// <summary>The same in a query.</summary>
public sealed record PriceCheckQuery(PriceCheckRequest Request, DateTimeOffset? AsOf, bool Workings) : IQuery<PriceCheckQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("sku", "Key of a stored design.", "string", Example: "RB-014", Required: true),
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("price", "The price as it is or would be listed: digits with at most one point.", "number", "decimal", "58.00", Required: true,
            Minimum: 0, Maximum: Limits.HighestPrice),
        new("currency", "ISO 4217 code of the price; a code other than the channel's is refused.", "string", Example: "USD"),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static PriceCheckQuery Read(QueryValues values) => new(
        new PriceCheckRequest
        {
            Sku = values.RequiredText("sku"),
            Channel = values.RequiredText("channel"),
            Price = values.RequiredNumber("price", new PriceAttribute { Above = true }),
            Currency = values.Text("currency", 3),
        },
        values.Time("asOf"), values.Boolean("workings"));
}
