using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of a <see cref="BreakEven"/> that there is.</summary>
internal readonly struct BreakEvenFormulas<T> where T : IFigure<T>
{
    public BreakEvenFormulas(UnitCost piece, Sale sale)
    {
        Contribution = T.Named("contribution", CheckFormulas<T>.LeftOf(sale, piece));
        BenchMustEarn = T.Named("benchMustEarn", piece.Year.BenchMustEarn);
        ExactUnits = T.Named("exactUnits", BenchMustEarn / Contribution);
        Units = T.Named("units", T.RoundUp(ExactUnits, 0));
        T hoursOfTheYear = T.Named("benchHoursOfTheYear", piece.Year.BenchHours), benchHours = T.Named("benchHours", piece.BenchHours);
        BenchHours = T.Named("unitsHours", Units * benchHours);
        Capacity = T.Named("capacity", T.RoundDown(hoursOfTheYear / benchHours, 0));
        Revenue = T.Named("revenue", Units * T.Named("revenueAPiece", sale.Revenue));
        ShareOfYear = T.Named("shareOfYear", BenchHours / hoursOfTheYear);
    }

    public T Contribution { get; }

    public T BenchMustEarn { get; }

    public T ExactUnits { get; }

    public T Units { get; }

    public T BenchHours { get; }

    public T Capacity { get; }

    public T Revenue { get; }

    public T ShareOfYear { get; }
}
