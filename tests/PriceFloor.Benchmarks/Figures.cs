namespace PriceFloor.Benchmarks;

/// <summary>Figures of two services that were measured in turn; printed as medians with their ratio, one line a figure.</summary>
public sealed class Figures(string one, string other)
{
    private readonly Dictionary<string, (List<double> One, List<double> Other)> _figures = [];

    public void Add(string name, double ofOne, double ofOther)
    {
        var (ones, others) = _figures.TryGetValue(name, out var known) ? known : _figures[name] = ([], []);
        ones.Add(ofOne);
        others.Add(ofOther);
    }

    /// <summary>The median of the ratios of each round, since what disturbs a round disturbs both sides of it.</summary>
    public void Print()
    {
        foreach (var (name, (ones, others)) in _figures)
            Console.WriteLine(FormattableString.Invariant(
                $"{name,-42} {one} {Median(ones),10:0.0}  {other} {Median(others),10:0.0}  ratio {Median([.. ones.Zip(others, (a, b) => b / a)]),6:0.00}"));
    }

    public static double Median(IReadOnlyList<double> values) => values.Order().ElementAt(values.Count / 2);
}
