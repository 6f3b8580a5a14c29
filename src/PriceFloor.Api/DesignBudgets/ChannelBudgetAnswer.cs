using System.Text.Json.Serialization;

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

    /// <summary>
    /// Why there is no figure: nothing-reaches-the-studio, price-below-materials, time-takes-it-all, bench-must-earn-nothing (bench time has
    /// nothing to recover), currency-mismatch.
    /// </summary>
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
        budget.Materials is not { } materials ? null
            : budget.AskedByMaterials ? Rounding.WithDecimals(materials, budget.Year.Currency.Decimals)
            : budget.Year.Currency.RoundDown(materials);
}
