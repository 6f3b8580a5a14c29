using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// The question answered for every draw, on all processors. Each draw is computed alone and kept at its place, so neither their number nor their
/// order can change a result.
/// </summary>
/// <typeparam name="T">What is asked of each draw.</typeparam>
internal sealed class Drawing<T> where T : struct
{
    private readonly T?[] _figures;

    private Drawing(T?[] figures, bool[] held)
    {
        (_figures, Held) = (figures, held);
        Possible = [.. Enumerable.Range(0, figures.Length).Where(draw => figures[draw] is not null)];
    }

    /// <summary>The draws that have an answer.</summary>
    public IReadOnlyList<int> Possible { get; }

    /// <summary>For each range, whether a draw of it was held at the bounds of its field.</summary>
    public IReadOnlyList<bool> Held { get; }

    /// <summary>Draws without an answer.</summary>
    public int NotPossible => _figures.Length - Possible.Count;

    /// <param name="ask">The figures of a draw's documents; null if they have no answer.</param>
    /// <param name="script">The changes.</param>
    /// <param name="numbers">The guessed numbers.</param>
    /// <param name="hypercube">Their draws.</param>
    /// <param name="pinned">A number that keeps its likely value; null if none does.</param>
    /// <param name="cancel">Ends it.</param>
    public static Drawing<T> Of(Func<ChangedDocuments, T?> ask, ChangeScript script, DrawnNumbers numbers, LatinHypercube hypercube, int? pinned,
        CancellationToken cancel)
    {
        var (figures, held, merging) = (new T?[hypercube.Draws], new bool[numbers.Ranges.Count], new Lock());
        Parallel.For(0, figures.Length, new ParallelOptions { CancellationToken = cancel },
            () => (Values: new decimal[numbers.Ranges.Count], Held: new bool[numbers.Ranges.Count]),
            (draw, _, own) =>
            {
                numbers.Draw(hypercube, draw, pinned, own.Values);
                figures[draw] = Of(ask, script, own.Values, own.Held);
                return own;
            },
            own =>
            {
                lock (merging)
                    for (var range = 0; range < held.Length; range++)
                        held[range] |= own.Held[range];
            });
        return new Drawing<T>(figures, held);
    }

    /// <summary>The figures with these values; null if there are none.</summary>
    public static T? Of(Func<ChangedDocuments, T?> ask, ChangeScript script, ReadOnlySpan<decimal> values, Span<bool> held = default)
    {
        try
        {
            return ask(script.With(values, held));
        }
        catch (OverflowException)
        {
            return null;
        }
    }

    /// <summary>One figure in every draw that has an answer.</summary>
    public DrawnFigure Figure(Func<T, decimal> figure) => new(Possible.Select(draw => figure(_figures[draw]!.Value)));

    /// <summary>In which draws something happens.</summary>
    public DrawnEvent Event(Func<T, bool> happens)
    {
        var drawn = new DrawnEvent();
        foreach (var draw in Possible)
            drawn.Count(draw, happens(_figures[draw]!.Value));
        return drawn;
    }
}
