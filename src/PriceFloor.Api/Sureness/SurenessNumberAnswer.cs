using System.Text.Json.Serialization;

namespace PriceFloor.Api.Sureness;

/// <summary>One guessed number.</summary>
public sealed record SurenessNumberAnswer
{
    /// <summary>What is drawn: the name of ranges that move together, or the document and the place.</summary>
    /// <example>design:RB-014#/making/steps/torch/handsOnMinutes</example>
    public required string Name { get; init; }

    /// <summary>One time in ten it is lower; null for several ranges together that differ.</summary>
    /// <example>30</example>
    public required decimal? Low { get; init; }

    /// <summary>As often above as below.</summary>
    /// <example>34</example>
    public required decimal? Likely { get; init; }

    /// <summary>One time in ten it is higher.</summary>
    /// <example>42</example>
    public required decimal? High { get; init; }

    /// <summary>With a sku: what it does to the floor.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public NumberEffectAnswer? Floor { get; init; }

    /// <summary>With a plan: what it does to the surplus before tax.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public NumberEffectAnswer? Plan { get; init; }

    /// <summary>Without a sku: what it does to what a carrying hour must bring.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public NumberEffectAnswer? PerBenchHour { get; init; }

    /// <summary>With pinned, of the three that matter most: nine tenths of the floor if this number were exactly its likely value.</summary>
    /// <example>65.36</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Pinned { get; init; }
}

/// <summary>What a number does to a figure.</summary>
/// <param name="Swing">The figure at low and at high less the likely one, all other numbers likely; exact, without draws.</param>
/// <param name="Share" example="0.58">The share of the figure's variance that it explains, two decimals; null if nothing varies.</param>
public sealed record NumberEffectAnswer(IReadOnlyList<decimal?> Swing, decimal? Share);
