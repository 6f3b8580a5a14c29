using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The lowest wholesale price of a piece and the retail price that goes with it, in the profile's currency.</summary>
public sealed class FloorPrice
{
    private readonly FloorPriceFormulas<Figure> _formulas;

    private FloorPrice(UnitCost piece, decimal? highestWholesale) =>
        (UnitCost, HighestWholesale, _formulas) = (piece, highestWholesale, new FloorPriceFormulas<Figure>(piece, highestWholesale));

    public UnitCost UnitCost { get; }

    /// <summary>The highest price before tax listed for the piece on a wholesale channel, if any.</summary>
    public decimal? HighestWholesale { get; }

    /// <summary>The floor rounded up: four pieces a day at 240 a day is 60.00; seven is 34.29.</summary>
    public decimal Wholesale => _formulas.Wholesale.Value;

    /// <summary>The retail multiple times wholesale, rounded up.</summary>
    public decimal Retail => _formulas.Retail.Value;

    /// <summary>
    /// W: the larger of wholesale and the highest price before tax listed on a wholesale channel: shops sell at twice what they really pay.
    /// </summary>
    public decimal WholesaleBase => _formulas.WholesaleBase.Value;

    /// <summary>k x W, unrounded: what a retail price before tax must reach to keep the studio's own rule.</summary>
    public decimal Target => _formulas.Target.Value;

    /// <param name="piece">The piece.</param>
    /// <param name="highestWholesale">The highest price before tax listed for it on a wholesale channel of the same currency, if any.</param>
    public static Outcome<FloorPrice> Of(UnitCost piece, decimal? highestWholesale) =>
        Outcome<FloorPrice>.Guard(() => new FloorPrice(piece, highestWholesale));
}
