using PriceFloor.Api.Evidence;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.ShelfLists;

/// <summary>Whose shelf, and which lines count.</summary>
/// <param name="Profile">Key of the profile.</param>
/// <param name="Asked">Which lines, and how sure.</param>
/// <param name="Dialect">How a sheet is written.</param>
/// <param name="AsOf">The moment; null: now.</param>
public sealed record ShelfQuery(string Profile, AskedOfLines Asked, SheetDialect Dialect, DateTimeOffset? AsOf) : IQuery<ShelfQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("profile", "Key of a stored profile: its designs.", "string", Example: "main", Required: true),
        .. AskedOfLines.Parameters,
        SheetQuery.Dialect,
        QueryParameters.AsOf,
    ];

    public static ShelfQuery Read(QueryValues values) =>
        new(values.RequiredText("profile"), AskedOfLines.Of(values, withLearning: false), SheetQuery.DialectOf(values), values.Time("asOf"));
}
