using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// A planned year month by month: hours and making ahead, receipts, bills, taxes and cash. Nothing here is rounded. A year that closes can be out of
/// cash in September, and a season that earns half its money in two months looks hopeless in August.
/// </summary>
public sealed class YearByMonth
{
    private readonly ByMonthFormulas<Figure> _formulas;
    private readonly IReadOnlyList<(CashPartKind Kind, Figure Amount)> _parts;
    private readonly decimal _lowestFree;

    private YearByMonth(StudioYear year, Plan plan, YearPlan totals, IReadOnlyList<DueLine> dues)
    {
        (Year, Plan, Totals, Dues) = (year, plan, totals, dues);
        _formulas = new ByMonthFormulas<Figure>(year, plan, totals.Lines, dues, totals.Formulas);
        _parts = _formulas.Parts; // here, where a figure that is too large is a fault
        _lowestFree = _formulas.LowestFree.Value;
        var first = new DateOnly(year.YearStart.Year, year.YearStart.Month, 1);
        Months = [.. Enumerable.Range(0, 12).Select(month => new PlanMonth(_formulas, month, first.AddMonths(month)))];
    }

    public StudioYear Year { get; }

    public Plan Plan { get; }

    /// <summary>The same lines as one year.</summary>
    public YearPlan Totals { get; }

    /// <summary>The profile's lines with the months in which they are due.</summary>
    public IReadOnlyList<DueLine> Dues { get; }

    public IReadOnlyList<PlanMonth> Months { get; }

    /// <summary>Y_plan: the profit before tax that the plan brings.</summary>
    public decimal Profit => Totals.Profit;

    /// <summary>The tax on it.</summary>
    public decimal Tax => _formulas.Cash.Tax.Value;

    /// <summary>What others owe when the year ends.</summary>
    public decimal OwedAtEnd => _formulas.Receipts.Owed[12].Value;

    public PlanMonth LowestCash => First(month => month.Cash, _formulas.LowestCash.Value);

    public PlanMonth LowestFree => First(month => month.Free, _lowestFree);

    /// <summary>What cash the year must begin with to keep the reserve.</summary>
    public decimal OpeningNeeded => _formulas.OpeningNeeded.Value;

    /// <summary>The first month in which more is worked than its own sales take; null if there is none.</summary>
    public PlanMonth? BuildFrom => Months.FirstOrDefault(month => Rounding.Settle(month.MadeHours) > Rounding.Settle(month.HoursToMake));

    /// <summary>The most hours of work that lie ready at any time, without the opening stock.</summary>
    public decimal StockAtMost => _formulas.Making.StockAtMost.Value;

    /// <summary>Whether the year has hours enough for all that is left to make; if not, no plan can help.</summary>
    public bool WithinCapacity => _formulas.Making.WithinCapacity;

    /// <summary>Bench hours that are left to work for the plan.</summary>
    public decimal HoursToMake => _formulas.Making.NeedsInAll.Value;

    /// <summary>Bench hours that there are for it.</summary>
    public decimal Capacity => _formulas.Making.CanInAll.Value;

    /// <summary>Whether more must lie ready when the year begins than does.</summary>
    public bool NeedsStockAtStart => !Plan.Steady && Rounding.Settle(Months[0].StockHours) > 0;

    /// <summary>The first of three months running that have no bench hour to spare; null if there are none.</summary>
    public PlanMonth? FullFrom => Months.Take(10).FirstOrDefault(month =>
        Months.Skip(month.Number - 1).Take(3).All(one => one.Capacity > 0 && one.MadeHours.Reaches(one.Capacity)));

    /// <summary>What of the tax on the plan no payment covers; 0 if all of it is paid in the year.</summary>
    public decimal TaxNotCovered => decimal.Max(0, Tax - (Tax * Plan.TaxPaid.Sum(payment => payment.Share ?? 0))
        - decimal.Max(0, Plan.TaxPaid.Sum(payment => payment.Amount ?? 0) - Plan.Opening.TaxSetAside));

    /// <summary>By how much cash changes over the year.</summary>
    public decimal Change => _formulas.Change.Value;

    /// <summary>From the profit of the year to the change of its cash.</summary>
    public IReadOnlyList<CashPart> Parts => [.. _parts.Select(part => new CashPart(part.Kind, part.Amount.Value))];

    /// <summary>
    /// The months of a plan that obeys its rules. Refused: pointers of <c>paidIn</c> that lead to no line, or to two, and figures past exactness
    /// (<c>too-large</c>).
    /// </summary>
    /// <param name="year">The profile's year.</param>
    /// <param name="plan">The plan; its lines and its stock name designs by their keys.</param>
    /// <param name="lines">Its lines, priced.</param>
    public static Outcome<YearByMonth> Of(StudioYear year, Plan plan, IReadOnlyList<PlannedLine> lines)
    {
        var dues = DueLine.Of(year.Profile, plan.PaidIn);
        return dues.Found is { } known ? Of(year, plan, lines, known) : dues.Faults.ToList();
    }

    /// <summary>The same where the months of the profile's lines are known already.</summary>
    public static Outcome<YearByMonth> Of(StudioYear year, Plan plan, IReadOnlyList<PlannedLine> lines, IReadOnlyList<DueLine> dues) =>
        Outcome<YearByMonth>.Guard(() =>
        {
            var totals = YearPlan.Of(year, lines, surplus: null, plan.HoursKeptBack);
            return totals.Found is null ? totals.Faults.ToList() : new YearByMonth(year, plan, totals.Value, dues);
        });

    /// <summary>
    /// The same plan at other figures: one year and the least cash at the end of a month, for whoever asks thousands of times and for nothing else.
    /// Refused are figures past exactness.
    /// </summary>
    /// <param name="year">The profile's year.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="lines">Its lines, priced.</param>
    /// <param name="dues">The profile's lines with the months in which they are due.</param>
    public Outcome<LowestCash> LowestCashWith(StudioYear year, Plan plan, IReadOnlyList<PlannedLine> lines, IReadOnlyList<DueLine> dues) =>
        Outcome<LowestCash>.Guard(() =>
        {
            var totals = YearPlan.Of(year, lines, surplus: null, plan.HoursKeptBack);
            if (totals.Found is not { } found)
                return totals.Faults.ToList();
            var months = new ByMonthFormulas<Figure>(year, plan, found.Lines, dues, found.Formulas, _formulas.Sold.Seasons);
            return new LowestCash(found, months.LowestCash.Value);
        });

    internal ByMonthFormulas<Figure> Formulas => _formulas;

    internal ByMonthFormulas<T> FormulasOf<T>() where T : IFigure<T> => new(Year, Plan, Totals.Lines, Dues);

    private PlanMonth First(Func<PlanMonth, decimal> figure, decimal least) =>
        Months.First(month => Rounding.Settle(figure(month)) == Rounding.Settle(least));
}
