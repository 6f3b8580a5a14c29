using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// What was measured, as the lines of one Markdown table: medians, ours beside what it was measured against in the same run. A ratio is the
/// median of the ratios of each round, since what disturbs a round disturbs both sides of it.
/// </summary>
public sealed class Figures
{
    private readonly Dictionary<string, Line> _lines = [];

    /// <summary>A round of a figure that was measured on both sides.</summary>
    /// <param name="name">What was measured.</param>
    /// <param name="unit">Its unit with the space before it; empty where the name says it.</param>
    /// <param name="reference">What ours was measured against, in a word.</param>
    /// <param name="ofReference">Its value.</param>
    /// <param name="ours">Ours.</param>
    /// <param name="wanted">What we aim at, of the ratio.</param>
    public void Add(string name, string unit, string reference, double ofReference, double ours, string wanted = "") =>
        LineOf(name, unit, reference, wanted).Rounds.Add((ofReference, ours));

    /// <summary>A round of a figure that is wanted for itself.</summary>
    public void Add(string name, string unit, double ours, string wanted = "") => LineOf(name, unit, "", wanted).Rounds.Add((double.NaN, ours));

    public void Print()
    {
        if (_lines.Count == 0)
            return; // all of it was skipped
        Console.WriteLine("""

            | figure | reference | ours | ratio | wanted |
            | --- | --- | --- | --- | --- |
            """);
        foreach (var (name, line) in _lines)
            Console.WriteLine($"| {name} | {line.Reference()} | {line.Ours()} | {line.Ratio()} | {line.Wanted} |");
    }

    public static double Median(IEnumerable<double> values) =>
        values.Order().ToList() is var all ? (all[(all.Count - 1) / 2] + all[all.Count / 2]) / 2 : 0;

    private Line LineOf(string name, string unit, string reference, string wanted) =>
        _lines.TryGetValue(name, out var known) ? known : _lines[name] = new Line(unit, reference, wanted);

    private sealed record Line(string Unit, string Against, string Wanted)
    {
        public List<(double Reference, double Ours)> Rounds { get; } = [];

        public string Reference() => Against.Length == 0 ? "" : $"{Against} {Text(Median(Rounds.Select(round => round.Reference)))}{Unit}";

        public string Ours() => Text(Median(Rounds.Select(round => round.Ours))) + Unit;

        public string Ratio() =>
            Against.Length == 0 ? "" : Median(Rounds.Select(round => round.Ours / round.Reference)).ToString("0.00", CultureInfo.InvariantCulture);

        private static string Text(double value) =>
            value.ToString(value == 0 || Math.Abs(value) >= 100 ? "#,0" : Math.Abs(value) >= 10 ? "0.0" : "0.00", CultureInfo.InvariantCulture);
    }
}
