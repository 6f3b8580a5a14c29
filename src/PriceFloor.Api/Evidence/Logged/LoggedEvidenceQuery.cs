using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What is asked of the stored lines of a channel or a profile.</summary>
/// <param name="Asked">Which lines, and how sure.</param>
/// <param name="AsOf">The moment; null: now.</param>
public sealed record LoggedEvidenceQuery(AskedOfLines Asked, DateTimeOffset? AsOf) : IQuery<LoggedEvidenceQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [.. AskedOfLines.Parameters, QueryParameters.AsOf];

    public static LoggedEvidenceQuery Read(QueryValues values) => new(AskedOfLines.Of(values, withLearning: false), values.Time("asOf"));
}
