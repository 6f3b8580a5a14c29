using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>
/// The smallest profit that leaves a need after tax: where its straight piece of the tax starts, and how far into the piece it lies.
/// </summary>
internal readonly struct ProfitFormulas<T> where T : IFigure<T>
{
    /// <param name="levies">The tax.</param>
    /// <param name="piece">The piece of it in which the profit lies.</param>
    /// <param name="need">What must be left, at least zero.</param>
    public ProfitFormulas(IReadOnlyList<Levy> levies, TaxPiece piece, T need)
    {
        UnitCost = piece;
        PaidOfOneMore = OfOneMore(levies, piece.Rates);
        var left = (T)1;
        foreach (var paid in PaidOfOneMore)
            left -= paid;
        KeptOfOneMore = T.Named("keptOfOneMore", left);
        Start = T.Named("pieceStart", piece.From);
        AtStart = new TaxFormulas<T>(levies, Start);
        KeptAtStart = T.Named("keptAtStart", Start - T.Named("pieceStartTax", AtStart.Total));
        Profit = T.Named("profitBeforeTax", levies.Count == 0 ? need
            : piece.From == 0 ? need / KeptOfOneMore
            : Start + T.Max(0, need - KeptAtStart) / KeptOfOneMore);
    }

    public TaxPiece UnitCost { get; }

    /// <summary>What each levy takes of one more unit of profit.</summary>
    public T[] PaidOfOneMore { get; }

    public T KeptOfOneMore { get; }

    /// <summary>Where the piece starts.</summary>
    public T Start { get; }

    /// <summary>The tax there; nothing at a profit of zero.</summary>
    public TaxFormulas<T> AtStart { get; }

    public T KeptAtStart { get; }

    public T Profit { get; }

    public static T[] OfOneMore(IReadOnlyList<Levy> levies, IReadOnlyList<decimal> rates)
    {
        var paid = new T[rates.Count];
        for (var i = 0; i < paid.Length; i++)
            paid[i] = T.Named("ofOneMore", i + 1, rates[i] * BaseOfOneMore(levies, i, paid));
        return paid;
    }

    /// <summary>By how much a levy's base rises with one more unit of profit.</summary>
    /// <param name="levies">The tax.</param>
    /// <param name="levy">Which of them.</param>
    /// <param name="paid">What those before it take of the unit.</param>
    public static T BaseOfOneMore(IReadOnlyList<Levy> levies, int levy, T[] paid)
    {
        T rise = levies[levy].Share;
        for (var j = 0; j < levy; j++)
            if (levies[j].DeductibleShare > 0)
                rise -= levies[j].DeductibleShare * paid[j];
        return rise;
    }
}
