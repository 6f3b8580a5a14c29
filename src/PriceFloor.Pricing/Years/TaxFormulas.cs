using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>The <see cref="Tax"/> on a profit, levy by levy.</summary>
internal readonly struct TaxFormulas<T> where T : IFigure<T>
{
    public TaxFormulas(IReadOnlyList<Levy> levies, T profit)
    {
        (Bases, Levies) = (new T[levies.Count], new T[levies.Count]);
        for (var i = 0; i < levies.Count; i++)
        {
            Bases[i] = T.Named("base", i + 1, BaseOf(levies, i, profit, Levies));
            Levies[i] = T.Named("levy", i + 1, Paid(levies[i], Bases[i]));
        }

        Total = T.Named("tax", Formulas.Sum(Levies));
    }

    /// <summary>What each levy is charged on.</summary>
    public T[] Bases { get; }

    public T[] Levies { get; }

    public T Total { get; }

    /// <summary>What a levy takes of its base, less what the income from elsewhere already pays in its bands.</summary>
    public static T Paid(Levy levy, T charged) => levy.OtherBase == 0 ? InBands(levy, charged)
        : InBands(levy, charged) - InBands(levy, T.Max(0, (T)levy.OtherBase - levy.Allowance));

    private static T BaseOf(IReadOnlyList<Levy> levies, int levy, T profit, T[] paid)
    {
        var charged = levies[levy].Share * profit + levies[levy].OtherBase - levies[levy].Allowance;
        for (var j = 0; j < levy; j++)
            if (levies[j].DeductibleShare > 0)
                charged -= levies[j].DeductibleShare * paid[j];
        return T.Max(0, charged);
    }

    private static T InBands(Levy levy, T charged)
    {
        T sum = 0;
        var lower = 0m;
        for (var i = 0; i < levy.Bands.Count && (T.IsWritten || charged.Value > lower); i++)
        {
            var band = levy.Bands[i];
            var inside = band.Rate * T.Max(0, (band.UpTo is { } top ? T.Min(charged, top) : charged) - lower);
            sum = i == 0 ? inside : sum + inside;
            lower = band.UpTo ?? lower;
        }

        return sum;
    }
}
