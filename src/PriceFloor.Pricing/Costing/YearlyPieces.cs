using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>
/// How many of a design the year can make and sell: the least over its hours and over each scarce thing that the design takes. A piece of
/// 2 hours and 1/24 load, 1,000 hours and 15 loads: 500 by the hours, 360 by the loads. Unrounded.
/// </summary>
public sealed class YearlyPieces
{
    private readonly YearlyPiecesFormulas<Figure> _formulas;

    internal YearlyPieces(UnitCost piece) => _formulas = new YearlyPiecesFormulas<Figure>(piece);

    /// <summary>H*u/t.</summary>
    public decimal InTheHours => _formulas.InTheHours.Value;

    /// <summary>The least of all of them.</summary>
    public decimal Pieces => _formulas.Pieces.Value;

    /// <summary>The scarce thing that allows the fewest pieces, if that is fewer than the hours allow.</summary>
    public ResourceLimit? LimitBeforeHours => _formulas.LimitBeforeHours;

    /// <summary>
    /// What a piece would have to bring in on any channel, its selling included, if this limit alone held the whole year back. Null if no limit does,
    /// and if it allows no piece at all.
    /// </summary>
    public decimal? FloorWithinLimit => _formulas.HasFloorWithinLimit ? _formulas.FloorWithinLimit.Value : null;
}
