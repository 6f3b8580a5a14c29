using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of <see cref="BetterYield"/>.</summary>
internal readonly struct BetterYieldFormulas<T> where T : IFigure<T>
{
    public BetterYieldFormulas(RemedyFigures figures, UnitCost flawless)
    {
        var (amount, piece) = (T.Named(figures.Bound.Symbol, figures.Amount), figures.UnitCost);
        T sellingCost = T.Named("sellingCost", figures.SellingCost);
        FlawlessCost = T.Named("flawlessCost", T.Named("flawlessBenchCost", flawless.BenchCost) + T.Named("flawlessMaterials", flawless.Materials)
            - T.Named("flawlessSecondsCredit", flawless.SecondsCredit) + sellingCost);
        var cost = T.Named("benchCost", piece.BenchCost) + T.Named("materials", piece.Materials) - T.Named("secondsCredit", piece.SecondsCredit)
            + sellingCost;
        PerStart = T.Named("costPerStart", (cost - FlawlessCost) / (1 / (T)figures.WorstShare - 1));
        IsEnough = figures.Amount.Reaches(FlawlessCost.Value) && Rounding.Settle(PerStart.Value) > 0;
        Starts = IsEnough ? T.Named("enoughStarts", 1 + (amount - FlawlessCost) / PerStart) : 0;
        GoodShare = IsEnough ? T.Named("enoughGoodShare", 1 / Starts) : 0;
    }

    public T FlawlessCost { get; }

    public T PerStart { get; }

    /// <summary>Whether some better yield alone is enough; otherwise what follows means nothing.</summary>
    public bool IsEnough { get; }

    public T Starts { get; }

    public T GoodShare { get; }
}
