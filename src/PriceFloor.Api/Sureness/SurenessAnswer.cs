using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sureness;

/// <summary>What the ranges make of the answers. Money in the profile's currency and with its decimals.</summary>
public sealed record SurenessAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What a carrying hour must bring.</summary>
    public required SpreadAnswer PerBenchHour { get; init; }

    /// <summary>With a sku: the floor of the design.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpreadAnswer? Floor { get; init; }

    /// <summary>With a channel: the smallest allowed price that carries its share in as many of the draws as sure says.</summary>
    /// <example>76.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? FloorPriceSure { get; init; }

    /// <summary>With a price: the share of the draws in which it carries its share, two decimals.</summary>
    /// <example>0.15</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Holds { get; init; }

    /// <summary>With a plan: what becomes of it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SurePlanAnswer? Plan { get; init; }

    /// <summary>With a quote or a line: what it is worth to know before taking or leaving it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WorthKnowingAnswer? WorthKnowing { get; init; }

    /// <summary>The numbers that are guessed, the one that matters most first.</summary>
    public required IReadOnlyList<SurenessNumberAnswer> Numbers { get; init; }

    /// <summary>How far shares of draws may be from what endless draws would give.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StandardErrorAnswer? StandardError { get; init; }

    /// <summary>How many draws were made.</summary>
    /// <example>4096</example>
    [WholeNumber]
    public required decimal Draws { get; init; }

    /// <summary>The seed.</summary>
    /// <example>0</example>
    [WholeNumber]
    public required decimal Seed { get; init; }

    /// <summary>Draws that have no answer, such as a year without bench time; they are left out.</summary>
    /// <example>0</example>
    [WholeNumber]
    public required decimal NotPossible { get; init; }

    /// <summary>What all shares are shares of: always these-ranges. They say what follows from the guesses, not what will happen.</summary>
    /// <example>these-ranges</example>
    public string Of { get; init; } = "these-ranges";

    /// <summary>The revisions that the answer rests on.</summary>
    public required SurenessBasisAnswer Basis { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}

/// <summary>A figure over all draws.</summary>
/// <param name="Tenth">One draw in ten is at or below it.</param>
/// <param name="Middle">Half of the draws are at or below it.</param>
/// <param name="NineTenths">Nine draws in ten are at or below it.</param>
public sealed record SpreadAnswer(decimal Tenth, decimal Middle, decimal NineTenths);

/// <summary>Standard errors of shares of draws, from blocks of draws, three decimals.</summary>
/// <param name="Closes" example="0.009">With a plan: of closes.</param>
/// <param name="Holds" example="0.004">With a price: of holds.</param>
public sealed record StandardErrorAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? Closes,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? Holds);
