using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>So many pieces of a design at a price on a channel, for a year. Unrounded.</summary>
public sealed class PlannedLine(PriceCheck check, decimal units)
{
    private readonly PlannedLineFormulas<Figure> _formulas = new(check, units, 1);

    public PriceCheck Check { get; } = check;

    public decimal Units { get; } = units;

    public UnitCost UnitCost => Check.Prices.Floor.UnitCost;

    public Sale Sale => Check.Sale;

    /// <summary>c: what one sale leaves toward what bench time must recover.</summary>
    public decimal Contribution => _formulas.Each.Contribution.Value;

    /// <summary>What reaches the studio for all of them.</summary>
    public decimal Proceeds => _formulas.Proceeds.Value;

    public decimal Materials => _formulas.Materials.Value;

    public decimal BenchHours => _formulas.BenchHours.Value;

    public decimal SellingHours => _formulas.SellingHours.Value;

    /// <summary>What all of them leave toward what bench time must recover.</summary>
    public decimal TotalContribution => _formulas.Contribution.Value;

    /// <summary>The same for each hour at the bench. If time is short, the line with the highest comes first.</summary>
    public decimal PerBenchHour => _formulas.PerBenchHour.Value;
}
