using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>What a run of one design must sell for at one quantity. Unrounded but where it says so.</summary>
/// <param name="Order">The run as an order.</param>
/// <param name="FloorTotalOfOne">The floor total of a run of one piece.</param>
/// <param name="QuantityJustBelow">One piece fewer, if that saves a whole load and has the lower floor a piece; else null.</param>
public sealed record RunPrice(MadeToOrder Order, decimal FloorTotalOfOne, int? QuantityJustBelow)
{
    /// <summary>Shares are answered in thousandths.</summary>
    internal const int ShareDecimals = 3;

    private const decimal Step = 0.001m, MostShare = 0.999m;

    public Run Run => Order.Runs[0];

    /// <summary>What a piece of the run must bring in.</summary>
    public decimal Floor => FormulasOf<Figure>().Floor.Value;

    /// <summary>
    /// The share off the floor total of one piece that the quantity really earns, down to 0.001: 89.65 for one and 140.50 for two earn 21.6 %.
    /// </summary>
    public decimal Earned => FormulasOf<Figure>().Earned.Value;

    /// <summary>
    /// The largest share off a listed price, on a grid of 0.001, with which the run sold at it reaches its floor total. Null if the price falls
    /// short.
    /// </summary>
    public decimal? MostOff(decimal listed)
    {
        var whole = Run.Quantity * listed;
        var share = decimal.Min(MostShare, Rounding.Down(1 - Order.FloorTotal / whole, ShareDecimals));
        while (share >= 0 && whole * (1 - share) < Order.FloorTotal)
            share -= Step;
        return share >= 0 ? share : null;
    }

    internal RunPriceFormulas<T> FormulasOf<T>() where T : IFigure<T> => new(Order, FloorTotalOfOne);
}
