using System.Text.RegularExpressions;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Explaining;

/// <summary>
/// Every intermediate quantity of an answer, in order: enough to redo it by hand, or by a few lines of script. Nothing is computed here: the formulas
/// are those that the answers come from, run once more with their text kept.
/// </summary>
public static partial class Workings
{
    private static Working Line(WrittenFigure figure, string label) => new(figure.Text, label, figure.Formula ?? figure.Text, figure.Value);

    private static string Named(string? name) => name is null ? "" : $" ({name})";

    /// <summary>The same lines of another case: their own symbols get a prefix, those of lines before them stay.</summary>
    /// <param name="prefix">What their symbols begin with.</param>
    /// <param name="words">What their labels begin with.</param>
    /// <param name="lines">The lines.</param>
    public static IEnumerable<Working> Prefixed(string prefix, string words, IEnumerable<Working> lines)
    {
        var own = new HashSet<string>();
        foreach (var line in lines.ToList())
        {
            var formula = Symbols().Replace(line.Formula, symbol => own.Contains(symbol.Value) ? WithPrefix(symbol.Value) : symbol.Value);
            own.Add(line.Symbol);
            yield return line with { Symbol = WithPrefix(line.Symbol), Label = words + line.Label, Formula = formula };
        }

        string WithPrefix(string symbol) => $"{prefix}{char.ToUpperInvariant(symbol[0])}{symbol[1..]}";
    }

    [GeneratedRegex("[A-Za-z][A-Za-z0-9]*", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Symbols();
}

/// <summary>
/// One line of the workings. The formula uses numbers and the symbols of earlier lines, with + - * / ( ), min, max, and roundup and rounddown to so
/// many decimals.
/// </summary>
/// <param name="Symbol">A short name, unique in the answer, that later formulas use.</param>
/// <param name="Label">What it is, in words.</param>
/// <param name="Formula">How it is computed.</param>
/// <param name="Value">What comes out, unrounded.</param>
public sealed record Working(string Symbol, string Label, string Formula, decimal Value);
