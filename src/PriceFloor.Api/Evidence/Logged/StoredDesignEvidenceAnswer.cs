using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What the stored lines of a design say of it.</summary>
public sealed record StoredDesignEvidenceAnswer
{
    /// <summary>The design's key.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>The channel whose sales the take is of; absent: all channels.</summary>
    /// <example>web</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>ISO 4217 code of the amounts: the profile's.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>The findings, in the order of the document.</summary>
    public required IReadOnlyList<FindingAnswer> Findings { get; init; }

    /// <summary>The floor, rounded up.</summary>
    public required FoundFloorAnswer Floor { get; init; }

    /// <summary>The design with all that was found, ready to be stored. Nothing is changed by itself.</summary>
    [JsonConverter(typeof(DraftText<Design>))]
    public required Design Draft { get; init; }

    /// <summary>What its pieces really brought; null if none was sold in the profile's currency.</summary>
    public required DesignTakeAnswer? Take { get; init; }

    /// <summary>How the work got quicker; null if the entries do not show it.</summary>
    public required LearningAnswer? Learning { get; init; }

    /// <summary>Why learning is null.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LearningFit.Absence? LearningReason { get; init; }

    /// <summary>How fast it sells.</summary>
    public required DaysAnswer Days { get; init; }

    /// <summary>One word that the evidence suggests, by its profile's whole shelf and all its channels.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DecisionAnswer? Decision { get; init; }

    /// <summary>What may make the findings wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>Defaults that the floor rests on.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What the answer rests on.</summary>
    public required EvidenceBasisAnswer Basis { get; init; }

    /// <summary>With workings=true: the floor as found, step by step.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }

    /// <param name="design">The design.</param>
    /// <param name="studio">The evidence that has only this design.</param>
    /// <param name="basis">What it rests on.</param>
    /// <param name="workings">Whether they are asked for.</param>
    public static StoredDesignEvidenceAnswer Of(DesignEvidence design, StudioEvidence studio, EvidenceBasisAnswer basis, bool workings)
    {
        // The same findings as of sheets: written by the same code.
        var same = DesignEvidenceAnswer.Of(design, studio, workings);
        return new StoredDesignEvidenceAnswer
        {
            Sku = same.Sku,
            Channel = studio.Choices.Channel,
            Currency = same.Currency,
            Findings = same.Findings,
            Floor = same.Floor,
            Draft = same.Draft,
            Take = DesignTakeAnswer.Of(design),
            Learning = same.Learning,
            LearningReason = same.LearningReason,
            Days = same.Days,
            Warnings = [.. same.Warnings, .. WarningAnswer.Of(EvidenceWarnings.OfMadeTwice(studio, "/days"))],
            Assumed = same.Assumed,
            Basis = basis,
            Workings = same.Workings,
        };
    }
}
