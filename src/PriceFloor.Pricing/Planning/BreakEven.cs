using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// How many pieces of one design at one price earn what bench time must recover. 60,000 at a contribution of 60 a piece: 1,000 pieces.
/// </summary>
public sealed class BreakEven
{
    private readonly BreakEvenFormulas<Figure> _formulas;

    private BreakEven(UnitCost piece, Sale sale) => (UnitCost, Sale, _formulas) = (piece, sale, new BreakEvenFormulas<Figure>(piece, sale));

    public UnitCost UnitCost { get; }

    public Sale Sale { get; }

    /// <summary>c: what one sale leaves toward what bench time must recover.</summary>
    public decimal Contribution => _formulas.Contribution.Value;

    public decimal BenchMustEarn => _formulas.BenchMustEarn.Value;

    /// <summary>Whole pieces, rounded up.</summary>
    public decimal Units => _formulas.Units.Value;

    /// <summary>Bench hours that they take.</summary>
    public decimal BenchHours => _formulas.BenchHours.Value;

    /// <summary>Whole pieces that the year's bench hours make.</summary>
    public decimal Capacity => _formulas.Capacity.Value;

    public bool WithinCapacity => Units <= Capacity;

    /// <summary>What they bring in before sales tax.</summary>
    public decimal Revenue => _formulas.Revenue.Value;

    /// <summary>Their part of the year's bench hours.</summary>
    public decimal ShareOfYear => _formulas.ShareOfYear.Value;

    /// <summary>How safe planned sales are. Refused with <c>too-large</c> if they pass exactness.</summary>
    /// <param name="planned">Pieces, above 0.</param>
    public Outcome<PlannedSales> At(decimal planned) => Outcome<PlannedSales>.Guard(() => new PlannedSales(this, planned));

    /// <summary>Refused with <c>never-breaks-even</c> if a sale leaves nothing toward what bench time must recover.</summary>
    public static Outcome<BreakEven> Of(UnitCost piece, Sale sale) => Outcome<BreakEven>.Guard(() =>
        0m.Reaches(ContributionOf(piece, sale))
            ? Never("At this price a sale leaves nothing for rent, living and tax once the channel and the materials are paid, "
                + "so no number of sales is enough; raise the price or lower materials or fees.")
            : new BreakEven(piece, sale));

    /// <summary>net(p) - M + C: what one sale leaves toward what bench time must recover.</summary>
    public static decimal ContributionOf(UnitCost piece, Sale sale) => CheckFormulas<Figure>.LeftOf(sale, piece).Value;

    internal static Fault Never(string detail) => new("", FaultCodes.NeverBreaksEven, detail);
}
