using System.Text.Json.Serialization;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>What a piece may take on one channel at the price; both figures are for a sold piece.</summary>
public sealed record ChannelBudgetAnswer
{
    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>The part of the price that reaches the studio; null for a channel in another currency.</summary>
    public decimal? NetProceeds { get; init; }

    /// <summary>Bench minutes for each sold piece, rounded down to two decimals; null if reason says why.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>Materials for each sold piece, rounded down; null if reason says why.</summary>
    public decimal? Materials { get; init; }

    /// <summary>
    /// Why there is no figure: nothing-reaches-the-studio, price-below-materials, time-takes-it-all, selling-takes-it-all, bench-must-earn-nothing
    /// (hours have nothing to recover), currency-mismatch.
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

    // The given figure is returned unchanged; the other is a maximum.
    private static decimal? MinutesOf(DesignBudget budget) =>
        budget.Minutes is not { } minutes ? null : budget.AskedByMaterials ? Rounding.Down(minutes, 2) : Rounding.Trim(minutes);

    private static decimal? MaterialsOf(DesignBudget budget) =>
        budget.Materials is not { } materials ? null
            : budget.AskedByMaterials ? Rounding.WithDecimals(materials, budget.Year.Currency.Decimals)
            : budget.Year.Currency.RoundDown(materials);
}
