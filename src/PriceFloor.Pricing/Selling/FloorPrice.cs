using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The lowest wholesale price of a piece and the retail price that goes with it, in the profile's currency.</summary>
public sealed class FloorPrice
{
    private FloorPrice(Piece piece, decimal? highestWholesale)
    {
        Piece = piece;
        Wholesale = piece.Year.Currency.Least(piece.Floor);
        WholesaleBase = decimal.Max(Wholesale, highestWholesale ?? 0);
        Target = RetailMultiple * WholesaleBase;
        Retail = piece.Year.Currency.Least(RetailMultiple * Wholesale);
    }

    public Piece Piece { get; }

    /// <summary>The floor rounded up: four pieces a day at 240 a day is 60.00; seven is 34.29.</summary>
    public decimal Wholesale { get; }

    /// <summary>The retail multiple times wholesale, rounded up.</summary>
    public decimal Retail { get; }

    /// <summary>W: the larger of wholesale and the highest price before tax listed on a wholesale channel: shops double what they really pay.</summary>
    public decimal WholesaleBase { get; }

    /// <summary>k x W, unrounded: what a retail price before tax must reach to keep the studio's own rule.</summary>
    public decimal Target { get; }

    private decimal RetailMultiple => Piece.Year.Profile.PriceRule.RetailMultiple;

    /// <param name="piece">The piece.</param>
    /// <param name="highestWholesale">The highest price before tax listed for it on a wholesale channel of the same currency, if any.</param>
    public static Outcome<FloorPrice> Of(Piece piece, decimal? highestWholesale) =>
        Outcome<FloorPrice>.Guard(() => new FloorPrice(piece, highestWholesale));
}
