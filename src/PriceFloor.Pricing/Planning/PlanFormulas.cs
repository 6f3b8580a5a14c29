using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of a <see cref="YearPlan"/>.</summary>
internal sealed class PlanFormulas<T> where T : IFigure<T>
{
    private readonly IReadOnlyList<PlannedLine> _lines;

    public PlanFormulas(StudioYear year, IReadOnlyList<PlannedLine> lines, Surplus? surplus, decimal hoursKeptBack)
    {
        _lines = lines;
        var ofLines = new PlannedLineFormulas<T>[lines.Count];
        for (var i = 0; i < ofLines.Length; i++)
            ofLines[i] = new PlannedLineFormulas<T>(lines[i].UnitCost, lines[i].Sale, lines[i].SellingHoursEach, lines[i].Units, i + 1);
        Lines = ofLines;
        Surplus = new SurplusFormulas<T>(year, surplus);
        Contribution = T.Named("contribution", Sum(line => line.Contribution));
        SurplusBeforeTax = T.Named("surplusBeforeTax", Contribution - Surplus.BenchMustEarn);
        Revenue = T.Named("revenue", Sum(line => line.Revenue));
        Proceeds = T.Named("proceeds", Sum(line => line.Proceeds));
        Materials = T.Named("planMaterials", Sum(line => line.Materials));
        BenchHours = T.Named("planHours", Sum(line => line.BenchHours));
        SellingHours = T.Named("planSellingHours", Formulas.Sum(Lines, line => line.SellingHours.Value > 0, (line, _) => line.SellingHours));
        HoursAvailable = T.Named("hoursAvailable", T.Named("benchHoursOfTheYear", year.BenchHours) - hoursKeptBack);

        Profit = T.Named("planProfit", Contribution - T.Named("allocated", year.Allocated) + T.Named("taxableIncome", year.TaxableIncome));
        OnProfit = new TaxFormulas<T>(year.TaxRules.Levies, T.Max(0, Profit));
        OnProfitAskedFor = new TaxFormulas<T>(year.TaxRules.Levies, Surplus.Profit);
        SurplusAfterTax = T.Named("surplusAfterTax",
            Profit - T.Named("planTax", OnProfit.Total) - (Surplus.Profit - T.Named("askedForTax", OnProfitAskedFor.Total)));

        T Sum(Func<PlannedLineFormulas<T>, T> figure) => Formulas.Sum(Array.ConvertAll(ofLines, line => figure(line)));
    }

    public IReadOnlyList<PlannedLineFormulas<T>> Lines { get; }

    public SurplusFormulas<T> Surplus { get; }

    public T Contribution { get; }

    public T SurplusBeforeTax { get; }

    public T Revenue { get; }

    public T Proceeds { get; }

    public T Materials { get; }

    public T BenchHours { get; }

    public T SellingHours { get; }

    public T HoursAvailable { get; }

    public T Profit { get; }

    public TaxFormulas<T> OnProfit { get; }

    public TaxFormulas<T> OnProfitAskedFor { get; }

    /// <summary>Not valid if the year does not close.</summary>
    public T SurplusAfterTax { get; }

    /// <summary>Stalls that the pieces of some lines take on one channel.</summary>
    /// <param name="stall">The channel's stall.</param>
    /// <param name="lines">Indices of the lines that are sold there.</param>
    /// <param name="number">The number of the channel among those with a stall, 1 first.</param>
    public T StallsOf(Stall stall, IReadOnlyList<int> lines, int number) =>
        T.Named("stalls", number, T.RoundUp(Formulas.Sum(lines.Select(line => Lines[line].Units)) / stall.Pieces, 0));

    /// <summary>Loads of a scarce thing: what one piece of each line takes of it, and what all take.</summary>
    /// <param name="thing">The thing.</param>
    /// <param name="number">Its number, 1 first.</param>
    public (IReadOnlyList<(int Line, T Loads)> Each, T All) LoadsOf(string thing, int number)
    {
        var each = _lines.Index().Select(line => (line.Index, Loads: line.Item.UnitCost.LoadsOf(thing))).Where(line => line.Loads > 0)
            .Select(line => (Line: line.Index, Loads: Named(line.Index + 1, line.Loads))).ToList();
        return (each, T.Named("loads", number, Formulas.Sum(each.Select(line => Lines[line.Line].Units * line.Loads))));

        T Named(int line, T loads) => T.IsWritten ? T.Named(string.Create(CultureInfo.InvariantCulture, $"loads{number}Each"), line, loads) : loads;
    }
}
