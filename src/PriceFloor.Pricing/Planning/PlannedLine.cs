using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>So many pieces of a design at a price on a channel, for a year. Unrounded.</summary>
public sealed class PlannedLine
{
    private PlannedLineFormulas<Figure>? _known;
    private readonly PriceCheck? _check;

    /// <param name="check">The piece at a price that was checked.</param>
    /// <param name="units">How many.</param>
    public PlannedLine(PriceCheck check, decimal units)
        : this(check.Prices.Floor.UnitCost, check.Sale, check.Prices.ChannelFloor.SellingHours, units) => _check = check;

    /// <param name="piece">The piece.</param>
    /// <param name="sale">The sale of one of them.</param>
    /// <param name="units">How many.</param>
    public PlannedLine(UnitCost piece, Sale sale, decimal units)
        : this(piece, sale, SellingTerms.TakesTime(sale.Channel) ? new ChannelFloor(piece, sale.Channel).SellingHours : 0, units) { }

    private PlannedLine(UnitCost piece, Sale sale, decimal sellingHours, decimal units) =>
        (UnitCost, Sale, SellingHoursEach, Units) = (piece, sale, sellingHours, units);

    /// <summary>The verdict on its price. Asking for it when the price was not checked is a bug.</summary>
    public PriceCheck Check => _check ?? throw new InvalidOperationException("The price of the line was not checked.");

    public decimal Units { get; }

    public UnitCost UnitCost { get; }

    public Sale Sale { get; }

    /// <summary>Hours of selling one of them.</summary>
    internal decimal SellingHoursEach { get; }

    private PlannedLineFormulas<Figure> Formulas => _known ??= new PlannedLineFormulas<Figure>(UnitCost, Sale, SellingHoursEach, Units, 1);

    /// <summary>c: what one sale leaves toward what bench time must recover.</summary>
    public decimal Contribution => Formulas.Each.Contribution.Value;

    /// <summary>What reaches the studio for all of them.</summary>
    public decimal Proceeds => Formulas.Proceeds.Value;

    public decimal Materials => Formulas.Materials.Value;

    public decimal BenchHours => Formulas.BenchHours.Value;

    public decimal SellingHours => Formulas.SellingHours.Value;

    /// <summary>What all of them leave toward what bench time must recover.</summary>
    public decimal TotalContribution => Formulas.Contribution.Value;

    /// <summary>The same for each hour at the bench. If time is short, the line with the highest comes first.</summary>
    public decimal PerBenchHour => Formulas.PerBenchHour.Value;
}
