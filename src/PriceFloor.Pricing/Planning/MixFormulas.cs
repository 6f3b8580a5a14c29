using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of a <see cref="MixBreakEven"/>.</summary>
internal sealed class MixFormulas<T> where T : IFigure<T>
{
    public MixFormulas(StudioYear year, IReadOnlyList<MixLine> lines, Surplus? surplus)
    {
        Lines = [.. lines.Select((line, i) => new LineFormulas<T>(line.UnitCost, line.Sale, i + 1))];
        Surplus = new SurplusFormulas<T>(year, surplus);
        PerMixUnit = T.Named("contributionPerMixUnit", Formulas.Sum(lines.Zip(Lines, (line, sold) => line.Ratio * sold.Contribution)));
        if (0m.Reaches(PerMixUnit.Value))
        {
            NeverBreaksEven = true;
            (MixUnits, ExactUnits, Units, BenchHours, Revenue, ShareOfYear) = (0, [], [], 0, 0, 0);
            return;
        }

        MixUnits = T.Named("mixUnits", Surplus.BenchMustEarn / PerMixUnit);
        ExactUnits = [.. lines.Select((line, i) => T.Named("exactUnits", i + 1, line.Ratio * MixUnits))];
        Units = [.. ExactUnits.Select((units, i) => T.Named("units", i + 1, Whole(units, Lines[i])))];
        BenchHours = T.Named("unitsHours", Formulas.Sum(Units.Zip(Lines, (units, line) => units * line.BenchHours)));
        Revenue = T.Named("revenue", Formulas.Sum(Units.Zip(Lines, (units, line) => units * line.Revenue)));
        ShareOfYear = T.Named("shareOfYear", BenchHours / T.Named("benchHoursOfTheYear", year.BenchHours));
    }

    public IReadOnlyList<LineFormulas<T>> Lines { get; }

    public SurplusFormulas<T> Surplus { get; }

    public T PerMixUnit { get; }

    /// <summary>Not valid if a unit of the mix leaves nothing.</summary>
    public bool NeverBreaksEven { get; }

    public T MixUnits { get; }

    public IReadOnlyList<T> ExactUnits { get; }

    public IReadOnlyList<T> Units { get; }

    public T BenchHours { get; }

    public T Revenue { get; }

    public T ShareOfYear { get; }

    /// <summary>A line that leaves nothing is not made once more for the year.</summary>
    private static T Whole(T units, LineFormulas<T> line) => line.Contribution.Value > 0 ? T.RoundUp(units, 0) : T.RoundDown(units, 0);
}
