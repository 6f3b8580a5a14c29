using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>How many units of a mix bring what bench time must recover, and the pieces of each line in them.</summary>
public sealed class MixBreakEven
{
    private readonly MixFormulas<Figure> _formulas;

    private MixBreakEven(StudioYear year, IReadOnlyList<MixLine> lines, Surplus? surplus, MixFormulas<Figure> formulas) =>
        (Year, Lines, Surplus, _formulas) = (year, lines, surplus, formulas);

    public StudioYear Year { get; }

    public IReadOnlyList<MixLine> Lines { get; }

    public Surplus? Surplus { get; }

    public decimal BenchMustEarn => _formulas.Surplus.BenchMustEarn.Value;

    /// <summary>What one unit of the mix leaves toward what bench time must recover.</summary>
    public decimal ContributionPerMixUnit => _formulas.PerMixUnit.Value;

    /// <summary>Units of the mix that bring what bench time must recover, not rounded.</summary>
    public decimal MixUnits => _formulas.MixUnits.Value;

    /// <summary>Whole pieces of each line: rounded up, or down for a line that leaves nothing.</summary>
    public IReadOnlyList<decimal> Units => [.. _formulas.Units.Select(units => units.Value)];

    public decimal BenchHours => _formulas.BenchHours.Value;

    public decimal Revenue => _formulas.Revenue.Value;

    public decimal ShareOfYear => _formulas.ShareOfYear.Value;

    public bool WithinCapacity => Year.BenchHours.Reaches(BenchHours);

    /// <summary>Refused with <c>never-breaks-even</c> if a unit of the mix leaves nothing toward what bench time must recover.</summary>
    public static Outcome<MixBreakEven> Of(StudioYear year, IReadOnlyList<MixLine> lines, Surplus? surplus) => Outcome<MixBreakEven>.Guard(() =>
    {
        var formulas = new MixFormulas<Figure>(year, lines, surplus);
        return formulas.NeverBreaksEven
            ? BreakEven.Never("In these proportions the sales leave nothing for rent, living and tax once channels and materials are paid; "
                + "raise prices or sell more of the lines that leave something.")
            : new MixBreakEven(year, lines, surplus, formulas);
    });
}

/// <summary>One line of a mix: a piece sold at a price, so many for each set.</summary>
public sealed record MixLine(UnitCost UnitCost, Sale Sale, decimal Ratio)
{
    public decimal Contribution => BreakEven.ContributionOf(UnitCost, Sale);
}
