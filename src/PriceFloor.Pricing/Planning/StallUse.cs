using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>Stalls that a plan takes on one channel. 130 pieces at a stall that sells 30: 5 stalls.</summary>
/// <param name="Stall">The channel's stall.</param>
/// <param name="Lines">Indices of the plan's lines that are sold there.</param>
/// <param name="Stalls">Whole stalls, rounded up.</param>
/// <param name="Units">Pieces sold there.</param>
public sealed record StallUse(Stall Stall, IReadOnlyList<int> Lines, decimal Stalls, decimal Units)
{
    /// <summary>Pieces that the year's stalls sell; null if there may be any number of stalls.</summary>
    public decimal? MostUnits => Stall.TimesAYear * Stall.Pieces;

    public bool Within => MostUnits is not { } most || most.Reaches(Units);
}
