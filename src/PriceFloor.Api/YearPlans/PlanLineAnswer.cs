using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.YearPlans;

/// <summary>One line of a year.</summary>
public sealed record PlanLineAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>The price in question, or the listed one.</summary>
    public required decimal Price { get; init; }

    /// <summary>Whole pieces.</summary>
    [WholeNumber]
    public required decimal Units { get; init; }

    /// <summary>The verdict on the price.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What reaches the studio for all of them.</summary>
    public required decimal Proceeds { get; init; }

    /// <summary>Materials for all of them.</summary>
    public required decimal Materials { get; init; }

    /// <summary>Bench hours for all of them, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>What all of them leave for rent, living and tax.</summary>
    public required decimal Contribution { get; init; }

    /// <summary>The same for each hour at the bench.</summary>
    public required decimal ContributionPerBenchHour { get; init; }

    /// <summary>Its place in the order in which to spend bench time if time is short; 1 is first.</summary>
    public required int Rank { get; init; }

    /// <summary>For a best plan: the season that the request gives the line; absent if it is sold evenly.</summary>
    /// <example>gifts</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Season { get; init; }

    /// <summary>For a best plan: whether its own minimum or maximum holds it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LineBound? HeldBy { get; init; }
}

/// <summary>What prevents a line of a best plan from having fewer or more pieces.</summary>
public enum LineBound { Minimum, Maximum }
