using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// The question answered for every draw, on all processors. Each draw is computed alone and kept at its place, so neither their number nor their
/// order can change a result.
/// </summary>
internal sealed class Drawing
{
    private readonly DrawnFigures?[] _figures;

    private Drawing(DrawnFigures?[] figures, bool[] held)
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

    public static Drawing Of(SurenessQuestion question, ChangeScript script, DrawnNumbers numbers, LatinHypercube hypercube, int? pinned,
        CancellationToken cancel)
    {
        var (figures, held, merging) = (new DrawnFigures?[hypercube.Draws], new bool[numbers.Ranges.Count], new Lock());
        Parallel.For(0, figures.Length, new ParallelOptions { CancellationToken = cancel },
            () => (Values: new decimal[numbers.Ranges.Count], Held: new bool[numbers.Ranges.Count]),
            (draw, _, own) =>
            {
                numbers.Draw(hypercube, draw, pinned, own.Values);
                figures[draw] = Of(question, script, own.Values, own.Held);
                return own;
            },
            own =>
            {
                lock (merging)
                    for (var range = 0; range < held.Length; range++)
                        held[range] |= own.Held[range];
            });
        return new Drawing(figures, held);
    }

    /// <summary>The figures with these values; null if there are none.</summary>
    public static DrawnFigures? Of(SurenessQuestion question, ChangeScript script, ReadOnlySpan<decimal> values, Span<bool> held = default)
    {
        try
        {
            return question.Of(script.With(values, held));
        }
        catch (OverflowException)
        {
            return null;
        }
    }

    /// <summary>One figure in every draw that has an answer.</summary>
    public DrawnFigure Figure(Func<DrawnFigures, decimal> figure) => new(Possible.Select(draw => figure(_figures[draw]!.Value)));

    /// <summary>In which draws the price carries its share.</summary>
    public DrawnEvent Holds()
    {
        var holds = new DrawnEvent();
        foreach (var draw in Possible)
            holds.Count(draw, _figures[draw]!.Value.Holds);
        return holds;
    }
}
