using System.Globalization;

namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// A figure that also knows how it came about, as one would type it into a calculator or a sheet: plain numbers, symbols, + - * / ( ), max, min,
/// roundup and rounddown. Numbers are written with 12 decimals at most. 2 times a net named "net" is written "2 * net".
/// </summary>
internal sealed class WrittenFigure : IFigure<WrittenFigure>
{
    private const string MaxOf = "max(", MinOf = "min(";

    private readonly Binding _binding;

    private WrittenFigure(decimal value, string text, Binding binding) => (Value, Text, _binding) = (value, text, binding);

    /// <summary>How tightly the outermost operation of a text holds together.</summary>
    private enum Binding { Sum, Product, Atom }

    public static bool IsWritten => true;

    public decimal Value { get; }

    /// <summary>The symbol, or else how it came about.</summary>
    public string Text { get; }

    /// <summary>How a figure came about that has a symbol.</summary>
    public string? Formula { get; private init; }

    public static implicit operator WrittenFigure(decimal number) =>
        new(number, Rounding.Trim(Rounding.Settle(number)).ToString(CultureInfo.InvariantCulture), number < 0 ? Binding.Sum : Binding.Atom);

    public static WrittenFigure operator +(WrittenFigure left, WrittenFigure right) =>
        new(left.Value + right.Value, Joined(left, "+", right, Binding.Sum), Binding.Sum);

    public static WrittenFigure operator -(WrittenFigure left, WrittenFigure right) =>
        new(left.Value - right.Value, Joined(left, "-", right, Binding.Sum), Binding.Sum);

    public static WrittenFigure operator *(WrittenFigure left, WrittenFigure right) =>
        new(left.Value * right.Value, Joined(left, "*", right, Binding.Product), Binding.Product);

    public static WrittenFigure operator /(WrittenFigure left, WrittenFigure right) =>
        new(left.Value / right.Value, Joined(left, "/", right, Binding.Product), Binding.Product);

    public static WrittenFigure Max(WrittenFigure left, WrittenFigure right) =>
        new(decimal.Max(left.Value, right.Value), Listed(MaxOf, left, right), Binding.Atom);

    public static WrittenFigure Min(WrittenFigure left, WrittenFigure right) =>
        new(decimal.Min(left.Value, right.Value), Listed(MinOf, left, right), Binding.Atom);

    public static WrittenFigure RoundUp(WrittenFigure figure, int decimals) =>
        new(Rounding.Up(figure.Value, decimals), Rounded("roundup", figure, decimals), Binding.Atom);

    public static WrittenFigure RoundDown(WrittenFigure figure, int decimals) =>
        new(Rounding.Down(figure.Value, decimals), Rounded("rounddown", figure, decimals), Binding.Atom);

    public static WrittenFigure Named(string symbol, WrittenFigure figure) =>
        new(figure.Value, symbol, Binding.Atom) { Formula = figure.Text };

    public static WrittenFigure Named(string symbol, int number, WrittenFigure figure) =>
        Named(string.Create(CultureInfo.InvariantCulture, $"{symbol}{number}"), figure);

    /// <summary>The right operand gets parentheses even if its own operator binds as tightly: a - (b - c).</summary>
    private static string Joined(WrittenFigure left, string sign, WrittenFigure right, Binding binding) =>
        $"{(left._binding < binding ? $"({left.Text})" : left.Text)} {sign} {(right._binding <= binding ? $"({right.Text})" : right.Text)}";

    /// <summary>max(max(a, b), c) is written max(a, b, c).</summary>
    private static string Listed(string function, WrittenFigure left, WrittenFigure right) =>
        left.Formula is null && left._binding == Binding.Atom && left.Text.StartsWith(function, StringComparison.Ordinal)
            ? $"{left.Text[..^1]}, {right.Text})"
            : $"{function}{left.Text}, {right.Text})";

    private static string Rounded(string function, WrittenFigure figure, int decimals) =>
        string.Create(CultureInfo.InvariantCulture, $"{function}({figure.Text}, {decimals})");
}
