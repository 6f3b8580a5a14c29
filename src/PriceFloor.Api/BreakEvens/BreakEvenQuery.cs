using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.BreakEvens;

/// <summary>One design on one channel, at the listed price if no price is given.</summary>
public sealed record BreakEvenQuery(string Channel, decimal? Price, decimal? Planned, DateTimeOffset? AsOf, bool Workings) : IQuery<BreakEvenQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("price", "A price in the channel's currency; the listed one if absent.", "number", "decimal", "120.00", Minimum: 0,
            Maximum: Limits.HighestPrice),
        new("planned", "Pieces planned for the year: adds marginOfSafety and operatingLeverage.", "number", "decimal", "1200",
            Minimum: 0, Maximum: 1_000_000),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static BreakEvenQuery Read(QueryValues values) => new(
        values.RequiredText("channel"), values.Number("price", new PriceAttribute { Above = true }),
        values.Number("planned", new QuantityAttribute { Above = true }), values.Time("asOf"), values.Boolean("workings"));
}
