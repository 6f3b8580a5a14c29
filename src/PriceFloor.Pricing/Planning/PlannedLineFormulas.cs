using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of a <see cref="PlannedLine"/>.</summary>
internal sealed class PlannedLineFormulas<T> where T : IFigure<T>
{
    /// <param name="piece">The piece.</param>
    /// <param name="sale">At its price.</param>
    /// <param name="sellingHours">Hours of selling one of them.</param>
    /// <param name="units">How many.</param>
    /// <param name="number">The number of the line, 1 first.</param>
    public PlannedLineFormulas(UnitCost piece, Sale sale, decimal sellingHours, decimal units, int number)
    {
        Each = new LineFormulas<T>(piece, sale, number);
        SellingHoursEach = T.Named("sellingHours", number, sellingHours);
        Units = T.Named("units", number, units);
        BenchHours = T.Named("lineHours", number, Units * Each.BenchHours);
        SellingHours = sellingHours == 0 ? 0 : T.Named("lineSellingHours", number, Units * SellingHoursEach);
        Revenue = T.Named("lineRevenue", number, Units * Each.Revenue);
        Proceeds = T.Named("lineProceeds", number, Units * Each.Net);
        Materials = T.Named("lineMaterials", number, Units * Each.Materials);
        Contribution = T.Named("lineContribution", number, Units * Each.Contribution);
        PerBenchHour = T.Named("perBenchHour", number, Each.Contribution / Each.BenchHours);
    }

    public LineFormulas<T> Each { get; }

    public T Units { get; }

    public T BenchHours { get; }

    public T SellingHoursEach { get; }

    /// <summary>0 if the channel takes no selling hours.</summary>
    public T SellingHours { get; }

    public T Revenue { get; }

    public T Proceeds { get; }

    public T Materials { get; }

    public T Contribution { get; }

    public T PerBenchHour { get; }
}
