using System.Text.Json.Serialization;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>A stored bench entry, without the id that it came with.</summary>
public sealed record BenchItemAnswer
{
    /// <summary>Its place in the log.</summary>
    /// <example>12</example>
    public required long Position { get; init; }

    /// <summary>Who sent it.</summary>
    /// <example>bench-book</example>
    public required string Source { get; init; }

    /// <summary>The local day.</summary>
    /// <example>2027-03-02</example>
    public required DateOnly On { get; init; }

    /// <summary>Key of the design; absent for work away from pieces.</summary>
    /// <example>RB-014</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Sku { get; init; }

    /// <summary>Name of the step; absent for the whole piece.</summary>
    /// <example>torch</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Step { get; init; }

    /// <summary>Pieces started.</summary>
    /// <example>12</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Started { get; init; }

    /// <summary>Pieces that came out good.</summary>
    /// <example>11</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Good { get; init; }

    /// <summary>Minutes for the whole batch.</summary>
    /// <example>792</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Minutes { get; init; }

    public static BenchItemAnswer Of(BenchLine line) => new()
    {
        Position = line.Position,
        Source = line.Source,
        On = DateOnly.FromDayNumber(line.Day),
        Sku = line.Design,
        Step = line.Step,
        Started = line.Started,
        Good = line.Good,
        Minutes = line.Minutes is { } hundredths ? Rounding.Trim(hundredths / 100m) : null,
    };
}
