using System.Text.Json.Serialization;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The revisions and the lines that an answer rests on.</summary>
public sealed record EvidenceBasisAnswer
{
    /// <summary>The profile.</summary>
    /// <example>main@7</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Profile { get; init; }

    /// <summary>The profiles, in order of key.</summary>
    /// <example>["main@7"]</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Profiles { get; init; }

    /// <summary>The design.</summary>
    /// <example>RB-014@3</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Design { get; init; }

    /// <summary>The channel.</summary>
    /// <example>web@2</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>The designs, in order of key.</summary>
    /// <example>["RB-014@3"]</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Designs { get; init; }

    /// <summary>The channels of its sales, in order of key.</summary>
    /// <example>["web@2"]</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Channels { get; init; }

    /// <summary>How far the log had come: the last position of movements and of bench entries.</summary>
    /// <example>m1204881+b3310</example>
    public required string Log { get; init; }
}
