using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>What a new piece may take, on the given channel and, at the same listed price, on every other.</summary>
public sealed record DesignBudgetAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The price in question.</summary>
    public required decimal Price { get; init; }

    /// <summary>The channel in question.</summary>
    public required string Channel { get; init; }

    /// <summary>The part of the price that reaches the studio.</summary>
    public required decimal NetProceeds { get; init; }

    /// <summary>Bench minutes for each sold piece, rounded down to two decimals; null if reason says why.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>Materials for each sold piece, rounded down; null if reason says why.</summary>
    public decimal? Materials { get; init; }

    /// <summary>Why there is no figure.</summary>
    /// <example>price-below-materials</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>What each hour at the bench must bring.</summary>
    public required decimal PerBenchHour { get; init; }

    /// <summary>The share of finished pieces that sells: a finished piece may take this share of the minutes and materials.</summary>
    public required decimal SoldShare { get; init; }

    /// <summary>The same question on every stored channel.</summary>
    public required IReadOnlyList<ChannelBudgetAnswer> Channels { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that make it too generous.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
