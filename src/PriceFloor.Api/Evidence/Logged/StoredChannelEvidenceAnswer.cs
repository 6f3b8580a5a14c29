using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What the stored orders of a channel say of it.</summary>
public sealed record StoredChannelEvidenceAnswer
{
    /// <summary>The channel's key.</summary>
    /// <example>web</example>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code of the amounts.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>The findings, in the order of the document.</summary>
    public required IReadOnlyList<FindingAnswer> Findings { get; init; }

    /// <summary>The channel with all that was found, ready to be stored. Nothing is changed by itself.</summary>
    [JsonConverter(typeof(DraftText<Channel>))]
    public required Channel Draft { get; init; }

    /// <summary>What may make the findings wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>Defaults of the channel.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What the answer rests on.</summary>
    public required EvidenceBasisAnswer Basis { get; init; }

    public static StoredChannelEvidenceAnswer Of(ChannelEvidence channel, IEnumerable<Warning> warnings, EvidenceBasisAnswer basis)
    {
        var same = ChannelEvidenceAnswer.Of(channel);
        return new StoredChannelEvidenceAnswer
        {
            Channel = same.Channel,
            Currency = channel.Stored.Currency,
            Findings = same.Findings,
            Draft = same.Draft,
            Warnings = [.. same.Warnings, .. WarningAnswer.Of(warnings)],
            Assumed = AssumptionAnswer.Of(Pricing.Explaining.Assumed.In(channel.Stored, "")),
            Basis = basis,
        };
    }
}
