using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>The guessed numbers: one for each range, or for ranges that move together. A range without width is no guess.</summary>
internal sealed class DrawnNumbers
{
    private readonly RangeDistribution[] _distributions;
    private readonly int?[] _numberOf;

    public DrawnNumbers(IReadOnlyList<RangedChange> ranges)
    {
        Ranges = ranges;
        _distributions = [.. ranges.Select(range => range.Change.Ends == RangeEnds.Never
            ? RangeDistribution.NeverBeyond(range.Low, range.Likely, range.High)
            : RangeDistribution.OneInTenBeyond(range.Low, range.Likely, range.High))];
        Names = [.. ranges.Where(range => range.Low < range.High).Select(NameOf).Distinct()];
        _numberOf = [.. ranges.Select(range => range.Low < range.High ? (int?)Names.ToList().IndexOf(NameOf(range)) : null)];
    }

    public IReadOnlyList<RangedChange> Ranges { get; }

    /// <summary>The name of each number.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>The ranges of a number.</summary>
    public IEnumerable<RangedChange> RangesOf(int number) => Ranges.Where((_, range) => _numberOf[range] == number);

    /// <summary>The values of all ranges in a draw.</summary>
    /// <param name="hypercube">The draws of the numbers.</param>
    /// <param name="draw">Which.</param>
    /// <param name="pinned">A number that keeps its likely value; null if none does.</param>
    /// <param name="values">Takes the values.</param>
    public void Draw(LatinHypercube hypercube, int draw, int? pinned, Span<decimal> values)
    {
        for (var range = 0; range < values.Length; range++)
            values[range] = _numberOf[range] is { } number && number != pinned
                ? _distributions[range].At(hypercube.ProbabilityOf(number, draw))
                : Ranges[range].Likely;
    }

    /// <summary>The values of all ranges with one number at one of its ends and the others likely.</summary>
    public decimal[] With(int number, Func<RangedChange, decimal> end) =>
        [.. Ranges.Select((range, i) => _numberOf[i] == number ? end(range) : range.Likely)];

    private static string NameOf(RangedChange range) => range.Change.Together ?? range.Name;
}
