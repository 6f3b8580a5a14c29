using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// What quotes that are done took over what was quoted for them, unrounded: the median of 3 hours for 2.5 quoted, 2 for 2 and 5 for 4 is 1.2.
/// </summary>
public sealed class QuotesRun
{
    private readonly QuotesRunFormulas<Figure> _formulas;

    private QuotesRun(IReadOnlyList<DoneQuote> done) => (Done, _formulas) = (done, new QuotesRunFormulas<Figure>(done));

    /// <summary>The quotes, those that ran over least first.</summary>
    public IReadOnlyList<DoneQuote> Done { get; }

    /// <summary>The ratio in the middle, or half way between the two in the middle.</summary>
    public decimal Median => _formulas.Median.Value;

    /// <summary>Null if no quote is done.</summary>
    /// <param name="done">The quotes in any order; equal ratios keep theirs.</param>
    public static QuotesRun? Of(IReadOnlyList<DoneQuote> done) =>
        done.Count == 0 ? null : new QuotesRun([.. done.OrderBy(quote => quote.Took / quote.Quoted)]);

    internal QuotesRunFormulas<T> FormulasOf<T>() where T : IFigure<T> => new(Done);
}

/// <summary>A quote that is done.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Took">Hours that it took.</param>
/// <param name="Quoted">Hours that were quoted; above 0.</param>
public sealed record DoneQuote(string Key, decimal Took, decimal Quoted);
