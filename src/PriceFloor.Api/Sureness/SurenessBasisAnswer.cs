using System.Text.Json.Serialization;

namespace PriceFloor.Api.Sureness;

/// <summary>The revisions that the answer rests on.</summary>
public sealed record SurenessBasisAnswer
{
    /// <summary>The profile with its revision.</summary>
    /// <example>main@1</example>
    public required string Profile { get; init; }

    /// <summary>The design with its revision.</summary>
    /// <example>RB-014@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Design { get; init; }

    /// <summary>The channel with its revision.</summary>
    /// <example>web@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>The plan with its revision.</summary>
    /// <example>main@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Plan { get; init; }

    /// <summary>The quote with its revision.</summary>
    /// <example>Q-2027-014@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Quote { get; init; }

    /// <summary>The scenario with its revision.</summary>
    /// <example>main@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Scenario { get; init; }

    /// <summary>How far the log had come from which the ranges, or the learning of the quote, are; absent if neither is.</summary>
    /// <example>m1204881+b3310</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Log { get; init; }

    /// <summary>Every stored document that a change names, with its revision.</summary>
    /// <example>["profile:main@1"]</example>
    public required IReadOnlyList<string> Changed { get; init; }
}
