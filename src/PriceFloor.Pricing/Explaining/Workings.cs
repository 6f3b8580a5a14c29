using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Explaining;

/// <summary>One line of the workings. The formula uses numbers and the symbols of earlier lines, with + - * / ( ) min and max.</summary>
/// <param name="Symbol">A short name, unique in the answer, that later formulas use.</param>
/// <param name="Label">What it is, in words.</param>
/// <param name="Formula">How it is computed.</param>
/// <param name="Value">What comes out, unrounded.</param>
public sealed record Working(string Symbol, string Label, string Formula, decimal Value);

/// <summary>Every intermediate quantity of an answer, in order: enough to redo it by hand, or by a few lines of script.</summary>
public static partial class Workings
{
    private static string SumOf(IEnumerable<IRecurring> lines) => Sum(lines.Select(Yearly));

    private static string Yearly(IRecurring line) => $"{Number(line.Amount)} * {Number(line.TimesAYear())}";

    private static string Sum(IEnumerable<string> parts) => string.Join(" + ", parts) is { Length: > 0 } sum ? sum : "0";

    private static string Named(string? name) => name is null ? "" : $" ({name})";

    private static string Number(decimal value) => Rounding.Trim(value).ToString(CultureInfo.InvariantCulture);
}
