using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.AccessKeys;

/// <summary>How long the old secret works beside the new one.</summary>
public sealed record KeyRotationQuery(int OverlapHours) : IQuery<KeyRotationQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [new("overlapHours", "Hours for which the present key still works; 0 ends it now.", "integer", Example: "48", Minimum: 0,
            Maximum: 720, Default: "24")];

    public static KeyRotationQuery Read(QueryValues values) => new(values.Integer("overlapHours", 0, 720, 24));
}
