using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>The formulas of a <see cref="YearByMonth"/>.</summary>
internal sealed class ByMonthFormulas<T> where T : IFigure<T>
{
    private readonly StudioYear _year;

    public ByMonthFormulas(StudioYear year, Plan plan, IReadOnlyList<PlannedLine> lines, IReadOnlyList<DueLine> dues,
        PlanFormulas<T>? known = null, SeasonsSold<T>? seasons = null)
    {
        _year = year;
        Year = known ?? new PlanFormulas<T>(year, lines, null, plan.HoursKeptBack);
        Sold = new SoldByMonthFormulas<T>(plan, lines, Year.Lines, seasons);
        Stock = new OpeningStockFormulas<T>(plan, Sold, Year.Lines);
        Making = new MakingFormulas<T>(plan, Sold, Stock, Year.HoursAvailable);
        Receipts = new ReceiptFormulas<T>(plan, Sold);
        Bills = new BillFormulas<T>(year, dues);
        Cash = new CashFormulas<T>(plan, Year, Sold, Making.Materials, Receipts, Bills);
        LowestCash = T.Named("lowestCash", Least(Cash.Cash.AsSpan(1)));
        OpeningNeeded = T.Named("openingNeeded", T.Max(0, plan.Reserve + Cash.Cash[0] - LowestCash));
        Change = T.Named("change", Cash.Cash[12] - Cash.Cash[0]);
    }

    public PlanFormulas<T> Year { get; }

    public SoldByMonthFormulas<T> Sold { get; }

    public OpeningStockFormulas<T> Stock { get; }

    public MakingFormulas<T> Making { get; }

    public ReceiptFormulas<T> Receipts { get; }

    public BillFormulas<T> Bills { get; }

    public CashFormulas<T> Cash { get; }

    public T LowestCash { get; }

    public T LowestFree => T.Named("lowestFree", Least(Cash.Free));

    /// <summary>What cash the year must begin with to keep the reserve.</summary>
    public T OpeningNeeded { get; }

    /// <summary>By how much cash changes over the year.</summary>
    public T Change { get; }

    /// <summary>From the profit of the year to the change of cash; computed when first asked for.</summary>
    public IReadOnlyList<(CashPartKind Kind, T Amount)> Parts => field ??= [.. PartsOf(_year)];

    private static T Least(ReadOnlySpan<T> months)
    {
        var least = months[0];
        foreach (var month in months[1..])
            least = T.Min(least, month);
        return least;
    }

    private IEnumerable<(CashPartKind, T)> PartsOf(StudioYear year)
    {
        yield return (CashPartKind.Profit, Year.Profit);
        yield return (CashPartKind.Depreciation, T.Named("depreciationOfTheYear", year.Depreciation));
        yield return (CashPartKind.BusinessShares, T.Named("businessShares", year.BusinessShares));
        yield return (CashPartKind.Household, 0 - Bills.HouseholdOfYear);
        yield return (CashPartKind.NotDeductible, 0 - T.Named("notDeductible", year.NotDeductible));
        yield return (CashPartKind.NetIncome, T.Named("netIncome", year.NetIncome));
        yield return (CashPartKind.TaxPaid, 0 - Cash.TaxPaidInAll);
        yield return (CashPartKind.EquipmentBought, 0 - Formulas.Sum(Bills.Bought));
        yield return (CashPartKind.DepositsHeld, Receipts.Deposits[12] - Receipts.Deposits[0]);
        yield return (CashPartKind.OwedToUs, Receipts.Owed[0] - Receipts.Owed[12]);
        yield return (CashPartKind.MaterialsInStock, Stock.AllMaterials);
        yield return (CashPartKind.SalesTaxHeld, Receipts.TaxHeld[12] - Receipts.TaxHeld[0]);
    }
}
