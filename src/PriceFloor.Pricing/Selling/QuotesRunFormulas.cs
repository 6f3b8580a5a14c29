using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of <see cref="QuotesRun"/>.</summary>
internal sealed class QuotesRunFormulas<T> where T : IFigure<T>
{
    /// <param name="done">The quotes by their ratios, at least one.</param>
    public QuotesRunFormulas(IReadOnlyList<DoneQuote> done)
    {
        Ratios = [.. done.Select((quote, i) => T.Named("quoteRan", i + 1, (T)quote.Took / quote.Quoted))];
        var (below, above) = (Ratios[(done.Count - 1) / 2], Ratios[done.Count / 2]);
        Median = T.Named("quotesRun", done.Count % 2 == 1 ? below : (below + above) / 2);
    }

    /// <summary>What each took over what was quoted.</summary>
    public T[] Ratios { get; }

    public T Median { get; }
}
