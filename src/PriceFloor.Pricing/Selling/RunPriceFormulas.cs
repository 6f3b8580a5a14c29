using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="RunPrice"/>.</summary>
internal readonly struct RunPriceFormulas<T> where T : IFigure<T>
{
    private readonly T _pieces;

    /// <param name="order">The run as an order.</param>
    /// <param name="floorTotalOfOne">The floor total of a run of one piece.</param>
    public RunPriceFormulas(MadeToOrder order, decimal floorTotalOfOne)
    {
        _pieces = T.Named("orderPieces", order.Pieces);
        FloorTotal = T.Named("atFloorTotalOrderTotal", order.FloorTotal);
        Floor = T.Named("floorOfAPiece", T.Named("orderFloor", order.Floor) / _pieces);
        PerPiece = T.Named("perPiece", FloorTotal / _pieces);
        Earned = T.Named("earned", order.Pieces == 1 ? 0 : T.RoundDown(1 - PerPiece / floorTotalOfOne, RunPrice.ShareDecimals));
    }

    public T FloorTotal { get; }

    public T Floor { get; }

    public T PerPiece { get; }

    public T Earned { get; }

    /// <summary>The run at a listed price with a share off.</summary>
    public T At(decimal listed, decimal share) => T.Named("atMostOff", _pieces * listed * (1 - (T)share));
}
