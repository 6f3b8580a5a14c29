using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What is asked of a design's stored lines.</summary>
/// <param name="Channel">The channel whose sales the take is of; null: all.</param>
/// <param name="Asked">Which lines, and how sure.</param>
/// <param name="AsOf">The moment; null: now.</param>
/// <param name="Workings">Whether to say how the floor came about.</param>
public sealed record DesignEvidenceQuery(string? Channel, AskedOfLines Asked, DateTimeOffset? AsOf, bool Workings) : IQuery<DesignEvidenceQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a channel: take is of its sales. What is found of the design itself is of all its lines. If absent: all channels.",
            "string", Example: "web"),
        .. AskedOfLines.Parameters,
        .. AskedOfLines.OfLearning,
        QueryParameters.AsOf,
        QueryParameters.Workings,
    ];

    public static DesignEvidenceQuery Read(QueryValues values) =>
        new(values.Text("channel"), AskedOfLines.Of(values, withLearning: true), values.Time("asOf"), values.Boolean("workings"));
}
