using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>So many pieces of a design at a price on a channel, for a year. Unrounded.</summary>
public sealed record PlannedLine(PriceCheck Check, decimal Units)
{
    public Piece Piece => Check.Prices.Floor.Piece;

    public Sale Sale => Check.Sale;

    /// <summary>c: what one sale leaves for the pool.</summary>
    public decimal Contribution => BreakEven.ContributionOf(Piece, Sale);

    /// <summary>What reaches the studio for all of them.</summary>
    public decimal Proceeds => Units * Sale.Net;

    public decimal Materials => Units * Piece.Materials;

    public decimal BenchHours => Units * Piece.BenchHours;

    /// <summary>What all of them leave for the pool.</summary>
    public decimal TotalContribution => Units * Contribution;

    /// <summary>The same for each hour at the bench: where time is what is short, the highest comes first.</summary>
    public decimal PerBenchHour => Contribution / Piece.BenchHours;
}
