using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Plans;

/// <summary>The progress of a plan from the log.</summary>
public sealed record PlanProgressQuery(DateOnly? Through, DateTimeOffset? AsOf, bool Workings) : IQuery<PlanProgressQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("through", "The last day that has passed, within the profile's year; if absent the day of asOf, or today in UTC.", "string", "date",
            "2027-08-31"),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static PlanProgressQuery Read(QueryValues values) => new(values.Date("through"), values.Time("asOf"), values.Boolean("workings"));
}
