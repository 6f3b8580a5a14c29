using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Audit;

/// <summary>A page of the trail.</summary>
public sealed record AuditQuery(int Limit, AuditPlace After) : IQuery<AuditQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [QueryParameters.Limit, QueryParameters.After with { Example = "9223372036854775807.3" }];

    public static AuditQuery Read(QueryValues values)
    {
        var limit = values.Integer("limit", 1, 1000, 100);
        if (values.Text("after") is not { } text)
            return new(limit, AuditPlace.Newest);
        if (AuditPlace.Read(text) is { } place)
            return new(limit, place);
        values.Add("after", InputCodes.UnknownCursor, "after must be the next of an earlier answer.");
        return new(limit, AuditPlace.Newest);
    }
}
