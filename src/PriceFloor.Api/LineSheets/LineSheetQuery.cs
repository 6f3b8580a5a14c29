using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.LineSheets;

/// <summary>The channel whose buyers the sheet is for.</summary>
public sealed record LineSheetQuery(string Channel, string? Profile, SheetDialect Dialect, DateTimeOffset? AsOf) : IQuery<LineSheetQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel: the buyers it is for.", "string", Example: "web", Required: true),
        new("profile", "Only designs of this cost profile.", "string", Example: "main"),
        SheetQuery.Dialect, QueryParameters.AsOf,
    ];

    public static LineSheetQuery Read(QueryValues values) =>
        new(values.RequiredText("channel"), values.Text("profile"), SheetQuery.DialectOf(values), values.Time("asOf"));
}
