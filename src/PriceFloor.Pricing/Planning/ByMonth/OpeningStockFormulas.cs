using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// Finished pieces of the opening stock serve their design's earliest sales, line by line in the order of the plan: their hours are spent and their
/// materials paid.
/// </summary>
internal sealed class OpeningStockFormulas<T> where T : IFigure<T>
{
    private readonly Plan _plan;
    private readonly SoldByMonthFormulas<T> _sold;
    private readonly IReadOnlyList<PlannedLineFormulas<T>> _lines;

    public OpeningStockFormulas(Plan plan, SoldByMonthFormulas<T> sold, IReadOnlyList<PlannedLineFormulas<T>> lines)
    {
        (_plan, _sold, _lines) = (plan, sold, lines);
        Taken = [.. plan.Opening.Stock.SelectMany(Served)];
        Hours = ByMonth(taken => taken.Pieces * lines[taken.Line].Each.BenchHours);
        Materials = ByMonth(taken => taken.Pieces * (lines[taken.Line].Each.Materials - lines[taken.Line].Each.SecondsCredit));
        AllMaterials = T.Named("materialsFromStock", Formulas.Sum(Materials.Where(month => month.Value != 0)));
    }

    /// <summary>What each line takes in each month.</summary>
    public IReadOnlyList<(int Line, int Month, T Pieces)> Taken { get; }

    /// <summary>The bench hours that need not be worked.</summary>
    public T[] Hours { get; }

    /// <summary>The materials that need not be paid, less what seconds brought.</summary>
    public T[] Materials { get; }

    /// <summary>The same of the year.</summary>
    public T AllMaterials { get; }

    private IEnumerable<(int Line, int Month, T Pieces)> Served(StockOfPieces stock)
    {
        var lines = _plan.Lines.Index().Where(line => line.Item.Sku == stock.Sku).Select(line => line.Index).ToList();
        T left = stock.Pieces;
        for (var month = 0; month < 12; month++)
            foreach (var line in lines)
            {
                var share = _sold.ShareOf(line, month);
                if (left.Value <= 0 || share.Value == 0 || _lines[line].Units.Value == 0)
                    continue;
                var symbol = T.IsWritten ? string.Create(CultureInfo.InvariantCulture, $"fromStock{line + 1}Month") : "";
                var taken = T.Named(symbol, month + 1, T.Min(left, _lines[line].Units * share));
                left -= taken;
                yield return (line, month, taken);
            }
    }

    private T[] ByMonth(Func<(int Line, int Month, T Pieces), T> figure)
    {
        var months = new T[12];
        Func<(int Line, int Month, T Pieces), int, T> taking = (taken, _) => figure(taken);
        for (var month = 0; month < 12; month++)
            months[month] = Formulas.Sum(Taken, month, (taken, due) => taken.Month == due, taking);
        return months;
    }
}
