using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The further income that makes up for a cut in what bench time must recover.</summary>
internal readonly struct IncomeFormulas<T> where T : IFigure<T>
{
    /// <param name="year">The year.</param>
    /// <param name="cut">Less for bench time to recover.</param>
    /// <param name="symbol">What the workings call it.</param>
    public IncomeFormulas(StudioYear year, decimal cut, string symbol = "cut")
    {
        var less = T.Named(symbol, cut);
        MoreTaxableIncome = T.Named("moreTaxableIncome", less);
        ProfitLeft = T.Named("profitLeft", T.Max(0, T.Named("profitBeforeTax", year.Profit) - less));
        OnProfitLeft = new TaxFormulas<T>(year.TaxRules.Levies, ProfitLeft);
        LeftAfterTax = T.Named("leftAfterTax", ProfitLeft - T.Named("lowerTax", OnProfitLeft.Total));
        MoreNetIncome = T.Named("moreNetIncome", cut == 0 ? 0 : InsteadOfProfit(year, LeftAfterTax));
    }

    public const string LargerCutSymbol = "largerCut";

    public T MoreTaxableIncome { get; }

    public T ProfitLeft { get; }

    public TaxFormulas<T> OnProfitLeft { get; }

    public T LeftAfterTax { get; }

    public T MoreNetIncome { get; }

    /// <summary>What both the floor and the target ask for.</summary>
    public static T LargerCut(decimal toFloor, decimal toTarget) =>
        T.Named(LargerCutSymbol, T.Max(T.Named("cut", toFloor), T.Named("toTargetCut", toTarget)));

    /// <summary>Income beyond what the household needs closes nothing yet, unless a least pay is asked for whatever else comes in.</summary>
    private static T InsteadOfProfit(StudioYear year, T left)
    {
        var more = T.Named("need", year.Need) - left;
        return year.Profile.Pay is not null ? more : more + T.Max(0, T.Named("netIncome", year.NetIncome) - T.Named("household", year.Household));
    }
}
