using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.AccessKeys;

/// <summary>A page of keys.</summary>
public sealed record KeyListQuery(int Limit, string? After) : IQuery<KeyListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [QueryParameters.Limit, QueryParameters.After];

    public static KeyListQuery Read(QueryValues values) => new(values.Integer("limit", 1, 1000, 100), values.Text("after"));
}
