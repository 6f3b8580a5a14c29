using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>What a <see cref="StudioYear"/> costs, the household and other income.</summary>
internal readonly struct CostFormulas<T> where T : IFigure<T>
{
    public CostFormulas(CostProfile profile, DateOnly yearStart)
    {
        AllocatedExpenses = T.Named("allocatedExpenses", ByYear(profile.Expenses, line => line is { Deductible: true, TracedTo: null }));
        Traced = T.Named("traced", ByYear(profile.Expenses, line => line is { Deductible: true, TracedTo: not null }));
        Machines = new DepreciationFormulas<T>[profile.Equipment.Count];
        for (var i = 0; i < Machines.Length; i++)
            Machines[i] = new DepreciationFormulas<T>(profile.Equipment[i], yearStart, i + 1);
        var machines = Machines;
        Depreciation = T.Named("depreciation", Formulas.Sum(profile.Equipment, _ => true, (_, i) => machines[i].Loss));
        BusinessShares = T.Named("businessShares",
            Formulas.Sum(profile.Household, line => line.BusinessShare > 0, (line, _) => ByYear(line) * line.BusinessShare));
        Allocated = T.Named("allocated", AllocatedExpenses + Depreciation + BusinessShares);
        Expenses = T.Named("expenses", Allocated + Traced);

        NotDeductible = T.Named("notDeductible", ByYear(profile.Expenses, line => !line.Deductible));
        var household = Formulas.Sum(profile.Household, _ => true, (line, _) => ByYear(line) * (1 - (T)line.BusinessShare));
        Household = T.Named("household", profile.Household.Count == 0 ? NotDeductible : household + NotDeductible);
        NetIncome = T.Named("netIncome", ByYear(profile.OtherIncome, line => line.Kind == IncomeKind.Net));
        TaxableIncome = T.Named("taxableIncome", ByYear(profile.OtherIncome, line => line.Kind == IncomeKind.Taxable));
    }

    public T AllocatedExpenses { get; }

    public T Traced { get; }

    public DepreciationFormulas<T>[] Machines { get; }

    public T Depreciation { get; }

    public T BusinessShares { get; }

    public T Allocated { get; }

    public T Expenses { get; }

    public T NotDeductible { get; }

    public T Household { get; }

    public T NetIncome { get; }

    public T TaxableIncome { get; }

    private static T ByYear<TLine>(IReadOnlyList<TLine> lines, Func<TLine, bool> counts) where TLine : IRecurring =>
        Formulas.Sum(lines, counts, (line, _) => ByYear(line));

    private static T ByYear(IRecurring line) => (T)line.Amount * line.TimesAYear();
}
