using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceLists;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.Remedies;

/// <summary>Which of the prices that fall short.</summary>
public sealed record RemedyListQuery(string? Channel, string? Profile, RemedyGoal Toward, PriceListSort Sort, int Limit, string? After,
    SheetDialect Dialect, DateTimeOffset? AsOf) : IQuery<RemedyListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel; absent: every channel.", "string", Example: "web"),
        new("profile", "Only designs of this cost profile.", "string", Example: "main"),
        RemedyQuery.TowardParameter,
        new("sort", "The order: key (default), or short-by, the price that is short of most first; then limit gives the first so many.", "string",
            Example: "short-by"),
        QueryParameters.Limit, QueryParameters.After with { Example = "RB-014/web" }, SheetQuery.Dialect, QueryParameters.AsOf,
    ];

    public static RemedyListQuery Read(QueryValues values)
    {
        var asked = new RemedyListQuery(values.Text("channel"), values.Text("profile"), values.EnumValue<RemedyGoal>("toward") ?? RemedyGoal.Floor,
            values.EnumValue<PriceListSort>("sort") ?? PriceListSort.Key, values.Integer("limit", 1, 1000, 100), values.Text("after", 200),
            SheetQuery.DialectOf(values), values.Time("asOf"));
        if (asked is { After: not null, Sort: not PriceListSort.Key })
            values.Add("after", FaultCodes.Unexpected,
                "A list that is sorted by another order than its keys has no pages; leave after out, or sort by key.");
        return asked;
    }
}
