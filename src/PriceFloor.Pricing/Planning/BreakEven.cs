using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// How many pieces of one design at one price carry the whole pool. A pool of 60,000 at a contribution of 60 a piece: 1,000 pieces.
/// </summary>
public sealed class BreakEven
{
    private BreakEven(Piece piece, Sale sale, decimal contribution, decimal pool)
    {
        Contribution = contribution;
        Pool = pool;
        Units = Rounding.Up(pool / contribution, 0);
        BenchHours = Units * piece.BenchHours;
        Capacity = Rounding.Down(piece.PiecesPerYear, 0);
        Revenue = Units * sale.Revenue;
        ShareOfYear = BenchHours / piece.Year.BenchHours;
    }

    /// <summary>c: what one sale leaves for the pool.</summary>
    public decimal Contribution { get; }

    public decimal Pool { get; }

    /// <summary>Whole pieces, rounded up.</summary>
    public decimal Units { get; }

    /// <summary>Bench hours that they take.</summary>
    public decimal BenchHours { get; }

    /// <summary>Whole pieces that the year's bench hours make.</summary>
    public decimal Capacity { get; }

    public bool WithinCapacity => Units <= Capacity;

    /// <summary>What they bring in before sales tax.</summary>
    public decimal Revenue { get; }

    /// <summary>Their part of the year's bench hours.</summary>
    public decimal ShareOfYear { get; }

    /// <summary>How safe planned sales are. Refused with <c>too-large</c> where they pass exactness.</summary>
    /// <param name="planned">Pieces, above 0.</param>
    public Outcome<PlannedSales> At(decimal planned) => Outcome<PlannedSales>.Guard(() => new PlannedSales(this, planned));

    /// <summary>Refused with <c>never-breaks-even</c> where a sale leaves nothing for the pool.</summary>
    public static Outcome<BreakEven> Of(Piece piece, Sale sale) => Outcome<BreakEven>.Guard(() =>
    {
        var contribution = ContributionOf(piece, sale);
        return 0m.Reaches(contribution)
            ? Never("At this price a sale leaves nothing for rent, living and tax once the channel and the materials are paid, so no number of sales is enough; raise the price or lower materials or fees.")
            : new BreakEven(piece, sale, contribution, piece.Year.Pool);
    });

    /// <summary>net(p) - M + C: what one sale leaves for the pool.</summary>
    public static decimal ContributionOf(Piece piece, Sale sale) => sale.Net - piece.Materials + piece.SecondsCredit;

    internal static Fault Never(string detail) => new("", FaultCodes.NeverBreaksEven, detail);
}
