using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Years;

/// <summary>What the year is compared with.</summary>
public sealed record YearQuery(decimal? Planned, decimal? Received, DateTimeOffset? AsOf) : IQuery<YearQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("planned", "Revenue that is planned for the year, in the profile's currency, such as the revenue of a year plan.", "number", "decimal",
            "52000.00", Minimum: 0, Maximum: Limits.HighestPrice),
        new("received", "Revenue that has come in so far, in the profile's currency.", "number", "decimal", "21500.00", Minimum: 0,
            Maximum: Limits.HighestPrice),
        QueryParameters.AsOf,
    ];

    public static YearQuery Read(QueryValues values) =>
        new(values.Number("planned", new MoneyAttribute()), values.Number("received", new MoneyAttribute()), values.Time("asOf"));
}
