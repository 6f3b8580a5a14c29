using System.Globalization;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>
/// Reads a line of the workings as anyone would type it into a calculator: numbers, symbols, + - * / ( ), min, max, roundup and rounddown.
/// </summary>
public sealed class Formula
{
    private readonly string _text;
    private readonly IReadOnlyDictionary<string, decimal> _symbols;
    private int _at;

    private Formula(string text, IReadOnlyDictionary<string, decimal> symbols) =>
        (_text, _symbols) = (text.Replace(" ", "", StringComparison.Ordinal), symbols);

    public static decimal Value(string text, IReadOnlyDictionary<string, decimal> symbols)
    {
        var formula = new Formula(text, symbols);
        var value = formula.Sum();
        return formula._at == formula._text.Length ? value : throw new FormatException($"{text}: stopped at {formula._at}");
    }

    private decimal Sum()
    {
        var value = Product();
        while (Next('+', '-') is { } sign)
            value = sign == '+' ? value + Product() : value - Product();
        return value;
    }

    private decimal Product()
    {
        var value = Factor();
        while (Next('*', '/') is { } sign)
            value = sign == '*' ? value * Factor() : value / Factor();
        return value;
    }

    private decimal Factor()
    {
        if (Next('-') is not null)
            return -Factor();
        if (Next('(') is not null)
        {
            var inner = Sum();
            Expect(')');
            return inner;
        }

        var start = _at;
        while (_at < _text.Length && (char.IsLetterOrDigit(_text[_at]) || _text[_at] == '.'))
            _at++;
        var word = _text[start.._at];
        return word switch
        {
            "min" => Arguments().Min(),
            "max" => Arguments().Max(),
            "roundup" => Arguments() is [var value, var decimals] ? Rounding.Up(value, (int)decimals) : throw new FormatException(_text),
            "rounddown" => Arguments() is [var value, var decimals] ? Rounding.Down(value, (int)decimals) : throw new FormatException(_text),
            _ when char.IsDigit(word[0]) => decimal.Parse(word, CultureInfo.InvariantCulture),
            _ => _symbols[word],
        };
    }

    private List<decimal> Arguments()
    {
        Expect('(');
        List<decimal> values = [Sum()];
        while (Next(',') is not null)
            values.Add(Sum());
        Expect(')');
        return values;
    }

    private char? Next(params ReadOnlySpan<char> signs) => _at < _text.Length && signs.Contains(_text[_at]) ? _text[_at++] : null;

    private void Expect(char sign)
    {
        if (Next(sign) is null)
            throw new FormatException($"{_text}: {sign} expected at {_at}");
    }
}
