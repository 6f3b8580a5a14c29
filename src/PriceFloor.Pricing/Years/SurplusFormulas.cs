using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>The profit and what bench time must recover in a year that should also leave a surplus; without one, those of the year.</summary>
internal readonly struct SurplusFormulas<T> where T : IFigure<T>
{
    public SurplusFormulas(StudioYear year, Surplus? surplus)
    {
        var profit = T.Named("profitBeforeTax", year.Profit);
        (NeedWithSurplus, Leaving) = (default!, default);
        if (surplus is { Tax: SurplusTax.After })
        {
            NeedWithSurplus = T.Named("needWithSurplus", T.Named("need", year.Need) + surplus.Amount);
            Leaving = year.TaxRules.Leaving(NeedWithSurplus);
            profit = T.Named("askedForProfitBeforeTax", Leaving.Profit);
        }
        else if (surplus is not null)
        {
            profit += surplus.Amount;
        }

        Profit = T.Named("profitAskedFor", profit);
        BenchMustEarn = T.Named("benchMustEarnWithSurplus", surplus is null ? T.Named("benchMustEarn", year.BenchMustEarn)
            : T.Max(0, T.Named("allocated", year.Allocated) + Profit - T.Named("taxableIncome", year.TaxableIncome)));
    }

    /// <summary>For a surplus after tax: what must be left.</summary>
    public T NeedWithSurplus { get; }

    /// <summary>For a surplus after tax: the profit that leaves it.</summary>
    public ProfitFormulas<T> Leaving { get; }

    public T Profit { get; }

    public T BenchMustEarn { get; }
}
