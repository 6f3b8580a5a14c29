namespace PriceFloor.Pricing;

/// <summary>Whether a wanted surplus is counted after tax or before.</summary>
public enum SurplusTax { After, Before }

/// <summary>What the year should leave beyond the need.</summary>
public sealed record Surplus
{
    /// <summary>The amount, in the profile's currency.</summary>
    /// <example>2000.00</example>
    [Money]
    public required decimal Amount { get; init; }

    /// <summary>"after": left over when tax is paid; "before": added to the profit that is taxed.</summary>
    public required SurplusTax Tax { get; init; }
}

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

    /// <summary>By how much of the plan sales may fall before the year no longer closes; negative where they must rise.</summary>
    public decimal MarginOfSafety(decimal planned) => (planned - Units) / planned;

    /// <summary>By what multiple a change of sales changes the surplus; null at or below break-even.</summary>
    public decimal? OperatingLeverage(decimal planned)
    {
        var earned = planned * Contribution;
        return Pool.Reaches(earned) ? null : earned / (earned - Pool);
    }

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

    internal static Fault Never(string detail) => new("", "never-breaks-even", detail);
}

/// <summary>One line of a mix: a piece sold at a price, so many for each set.</summary>
public sealed record MixLine(Piece Piece, Sale Sale, decimal Ratio)
{
    public decimal Contribution { get; } = BreakEven.ContributionOf(Piece, Sale);
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
