using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What the stored lines of all designs and days say of a profile.</summary>
public sealed record StoredProfileEvidenceAnswer
{
    /// <summary>The profile's key.</summary>
    /// <example>main</example>
    public required string Profile { get; init; }

    /// <summary>ISO 4217 code of the amounts.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>The findings, in the order of the document.</summary>
    public required IReadOnlyList<FindingAnswer> Findings { get; init; }

    /// <summary>The profile with all that was found, ready to be stored. Nothing is changed by itself.</summary>
    [JsonConverter(typeof(DraftText<CostProfile>))]
    public required CostProfile Draft { get; init; }

    /// <summary>What may make the findings wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>Defaults of the profile.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What the answer rests on.</summary>
    public required EvidenceBasisAnswer Basis { get; init; }

    public static StoredProfileEvidenceAnswer Of(string key, CostProfile stored, ProfileEvidence profile, IEnumerable<Warning> warnings,
        EvidenceBasisAnswer basis)
    {
        var same = ProfileEvidenceAnswer.Of(key, profile);
        return new StoredProfileEvidenceAnswer
        {
            Profile = same.Profile,
            Currency = stored.Currency,
            Findings = same.Findings,
            Draft = same.Draft,
            Warnings = WarningAnswer.Of(EvidenceWarnings.In(profile).Concat(warnings)),
            Assumed = AssumptionAnswer.Of(Pricing.Explaining.Assumed.In(stored)),
            Basis = basis,
        };
    }
}
