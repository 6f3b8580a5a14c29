using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>One line of a mix: a piece sold at a price, so many for each set.</summary>
public sealed record MixLine(Piece Piece, Sale Sale, decimal Ratio)
{
    public decimal Contribution => BreakEven.ContributionOf(Piece, Sale);
}

/// <summary>How many units of a mix carry the pool, and the pieces of each line in them.</summary>
public sealed class MixBreakEven
{
    private MixBreakEven(StudioYear year, IReadOnlyList<MixLine> lines, decimal pool, decimal perMixUnit)
    {
        Lines = lines;
        Pool = pool;
        ContributionPerMixUnit = perMixUnit;
        MixUnits = pool / perMixUnit;
        Units = [.. lines.Select(line => line.Contribution > 0 ? Rounding.Up(line.Ratio * MixUnits, 0) : Rounding.Down(line.Ratio * MixUnits, 0))];
        BenchHours = lines.Zip(Units, (line, units) => units * line.Piece.BenchHours).Sum();
        Revenue = lines.Zip(Units, (line, units) => units * line.Sale.Revenue).Sum();
        ShareOfYear = BenchHours / year.BenchHours;
        WithinCapacity = year.BenchHours.Reaches(BenchHours);
    }

    public IReadOnlyList<MixLine> Lines { get; }

    public decimal Pool { get; }

    /// <summary>What one unit of the mix leaves for the pool.</summary>
    public decimal ContributionPerMixUnit { get; }

    /// <summary>Units of the mix that carry the pool, not rounded.</summary>
    public decimal MixUnits { get; }

    /// <summary>Whole pieces of each line: rounded up, or down for a line that leaves nothing.</summary>
    public IReadOnlyList<decimal> Units { get; }

    public decimal BenchHours { get; }

    public decimal Revenue { get; }

    public decimal ShareOfYear { get; }

    public bool WithinCapacity { get; }

    /// <summary>Refused with <c>never-breaks-even</c> where a unit of the mix leaves nothing for the pool.</summary>
    public static Outcome<MixBreakEven> Of(StudioYear year, IReadOnlyList<MixLine> lines, Surplus? surplus) => Outcome<MixBreakEven>.Guard(() =>
    {
        var perMixUnit = lines.Sum(line => line.Ratio * line.Contribution);
        return 0m.Reaches(perMixUnit)
            ? BreakEven.Never("In these proportions the sales leave nothing for rent, living and tax once channels and materials are paid; raise prices or sell more of the lines that leave something.")
            : new MixBreakEven(year, lines, year.PoolWith(surplus), perMixUnit);
    });
}
