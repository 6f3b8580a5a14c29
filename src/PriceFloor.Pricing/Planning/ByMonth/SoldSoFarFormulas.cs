using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The formulas of a <see cref="SoldSoFar"/>.</summary>
internal sealed class SoldSoFarFormulas<T> where T : IFigure<T>
{
    /// <param name="sold">What was sold.</param>
    /// <param name="number">Its number, 1 first.</param>
    public SoldSoFarFormulas(SoldSoFar sold, int number)
    {
        Net = T.Named("soldNet", number, sold.Net);
        Materials = T.Named("soldMaterials", number, sold.Materials);
        SecondsCredit = T.Named("soldSecondsCredit", number, sold.SecondsCredit);
        Left = T.Named("soldLeft", number, Net - sold.Pieces * (Materials - SecondsCredit));
    }

    /// <summary>What reached the studio.</summary>
    public T Net { get; }

    /// <summary>Of a piece.</summary>
    public T Materials { get; }

    /// <summary>Of a piece.</summary>
    public T SecondsCredit { get; }

    /// <summary>What it has left for the year.</summary>
    public T Left { get; }
}
