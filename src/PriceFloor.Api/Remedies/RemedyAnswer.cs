using System.Text.Json.Serialization;

namespace PriceFloor.Api.Remedies;

/// <summary>One way to fix the price, alone.</summary>
public sealed record RemedyAnswer
{
    /// <summary>Which way.</summary>
    public required RemedyKind Remedy { get; init; }

    /// <summary>
    /// What before and after count: a listed price, bench minutes a sold piece, money a year or a sold piece in the profile's currency, the share of
    /// pieces that come out good, or working hours a week.
    /// </summary>
    public required RemedyMeasure Measure { get; init; }

    /// <summary>Whether it can be enough alone.</summary>
    public required bool Possible { get; init; }

    /// <summary>The figure today, counted as measure says; null where nothing of the price reaches the studio.</summary>
    public decimal? Before { get; init; }

    /// <summary>The figure that is enough, counted as measure says and rounded to the safe side; null where the way is not possible.</summary>
    public decimal? After { get; init; }

    /// <summary>The change in the maker's words, such as "41 bench minutes a piece instead of 52", or why it cannot be.</summary>
    public required string InWords { get; init; }

    /// <summary>A stable word where it is not possible.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>With spend-less: what the year's costs must fall by, rounded up. After is before less this; it is the figure to plan with.</summary>
    /// <example>4040.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Cut { get; init; }

    /// <summary>"long-week" where the figure is there to be seen, not to be followed.</summary>
    /// <example>long-week</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Flag { get; init; }
}
