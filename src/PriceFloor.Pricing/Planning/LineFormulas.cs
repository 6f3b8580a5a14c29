using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>What one sale of a line of a mix or plan is, beside other lines: known from its own price check, and called by its number here.</summary>
internal readonly struct LineFormulas<T> where T : IFigure<T>
{
    /// <param name="piece">What is sold.</param>
    /// <param name="sale">At which price, and where.</param>
    /// <param name="number">The number of the line, 1 first.</param>
    public LineFormulas(UnitCost piece, Sale sale, int number)
    {
        Number = number;
        Net = T.Named("net", number, sale.Net);
        Revenue = T.Named("revenueAPiece", number, sale.Revenue);
        Materials = T.Named("materials", number, piece.Materials);
        SecondsCredit = T.Named("secondsCredit", number, piece.SecondsCredit);
        BenchHours = T.Named("benchHours", number, piece.BenchHours);
        Contribution = T.Named("contribution", number, CheckFormulas<T>.LeftOf(Net, Materials, SecondsCredit));
    }

    public int Number { get; }

    public T Net { get; }

    public T Revenue { get; }

    public T Materials { get; }

    public T SecondsCredit { get; }

    public T BenchHours { get; }

    public T Contribution { get; }
}
