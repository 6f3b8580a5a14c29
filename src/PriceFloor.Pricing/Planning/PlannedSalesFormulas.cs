using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of <see cref="PlannedSales"/>.</summary>
internal readonly struct PlannedSalesFormulas<T> where T : IFigure<T>
{
    public PlannedSalesFormulas(BreakEven breakEven, decimal planned)
    {
        Planned = T.Named("planned", planned);
        MarginOfSafety = T.Named("marginOfSafety", (Planned - T.Named("units", breakEven.Units)) / Planned);
        PlannedContribution = T.Named("plannedContribution", Planned * T.Named("contribution", breakEven.Contribution));
        var mustEarn = T.Named("benchMustEarn", breakEven.BenchMustEarn);
        AboveBreakEven = !breakEven.BenchMustEarn.Reaches(PlannedContribution.Value);
        OperatingLeverage = AboveBreakEven ? T.Named("operatingLeverage", PlannedContribution / (PlannedContribution - mustEarn)) : 0;
    }

    public T Planned { get; }

    public T MarginOfSafety { get; }

    public T PlannedContribution { get; }

    public bool AboveBreakEven { get; }

    /// <summary>Means something only above break-even.</summary>
    public T OperatingLeverage { get; }
}
