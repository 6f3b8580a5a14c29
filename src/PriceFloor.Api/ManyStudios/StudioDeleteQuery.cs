using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.ManyStudios;

/// <summary>The key of the studio once more, so nothing is forgotten by a slip.</summary>
public sealed record StudioDeleteQuery(string Repeat) : IQuery<StudioDeleteQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [new("repeat", "The key of the studio once more, so none is forgotten by a slip.", "string", Example: "harbour", Required: true)];

    public static StudioDeleteQuery Read(QueryValues values) => new(values.RequiredText("repeat"));
}
