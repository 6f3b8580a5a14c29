using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>What a piece may take on one channel at the price; both figures a sold piece.</summary>
public sealed record ChannelBudgetAnswer
{
    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>What of the price reaches the studio; null for a channel in another currency.</summary>
    public decimal? NetProceeds { get; init; }

    /// <summary>Bench minutes a sold piece, rounded down to two decimals; null where reason says why.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>Materials a sold piece, rounded down; null where reason says why.</summary>
    public decimal? Materials { get; init; }

    /// <summary>Why there is no figure: nothing-reaches-the-studio, price-below-materials, time-takes-it-all, bench-must-earn-nothing (bench time has nothing to recover), currency-mismatch.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    public static ChannelBudgetAnswer Of(string channel, DesignBudget budget) => new()
    {
        Channel = channel,
        NetProceeds = budget.Year.Currency.Round(budget.Sale.Net),
        Minutes = MinutesOf(budget),
        Materials = MaterialsOf(budget),
        Reason = budget.Reason,
    };

    // What was given goes back as it came; what was asked for is the most that may be.
    private static decimal? MinutesOf(DesignBudget budget) =>
        budget.Minutes is not { } minutes ? null : budget.AskedByMaterials ? Rounding.Down(minutes, 2) : Rounding.Trim(minutes);

    private static decimal? MaterialsOf(DesignBudget budget) =>
        budget.Materials is not { } materials ? null : budget.AskedByMaterials ? Rounding.WithDecimals(materials, budget.Year.Currency.Decimals) : budget.Year.Currency.RoundDown(materials);
}

/// <summary>What a new piece may take, on the channel asked about and, at the same listed price, on every other.</summary>
public sealed record DesignBudgetAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The price that was asked about.</summary>
    public required decimal Price { get; init; }

    /// <summary>The channel that was asked about.</summary>
    public required string Channel { get; init; }

    /// <summary>What of the price reaches the studio.</summary>
    public required decimal NetProceeds { get; init; }

    /// <summary>Bench minutes a sold piece, rounded down to two decimals; null where reason says why.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>Materials a sold piece, rounded down; null where reason says why.</summary>
    public decimal? Materials { get; init; }

    /// <summary>Why there is no figure.</summary>
    /// <example>price-below-materials</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>What each hour at the bench must bring.</summary>
    public required decimal PerBenchHour { get; init; }

    /// <summary>Of the finished pieces, the share that sells: a finished piece may take this share of the minutes and materials.</summary>
    public required decimal SoldShare { get; init; }

    /// <summary>The same question on every stored channel.</summary>
    public required IReadOnlyList<ChannelBudgetAnswer> Channels { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer leaned on and that make it too kind.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
