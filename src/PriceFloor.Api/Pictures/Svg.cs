using System.Globalization;
using System.Text;
using System.Xml;

namespace PriceFloor.Api.Pictures;

/// <summary>
/// Writes SVG text: everything escaped, coordinates with at most two decimals and a point, so the same picture always has the same bytes.
/// </summary>
public sealed class Svg
{
    private readonly StringBuilder _text = new();

    public Svg Open(string element, params ReadOnlySpan<(string Name, object? Value)> attributes) => Tag(element, attributes, ">\n");

    public Svg Close(string element) => Raw($"</{element}>\n");

    public Svg Shape(string element, params ReadOnlySpan<(string Name, object? Value)> attributes) => Tag(element, attributes, "/>\n");

    public Svg Words(string element, string words, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        Tag(element, attributes, ">");
        Escaped(words);
        return Close(element);
    }

    /// <summary>Text that is already SVG.</summary>
    public Svg Raw(string svg)
    {
        _text.Append(svg);
        return this;
    }

    public override string ToString() => _text.ToString();

    /// <summary>A coordinate: two decimals are a hundredth of a pixel.</summary>
    public static string Number(decimal value) => Rounding.Trim(Rounding.Nearest(value, 2)).ToString(CultureInfo.InvariantCulture);

    private Svg Tag(string element, ReadOnlySpan<(string Name, object? Value)> attributes, string end)
    {
        _text.Append('<').Append(element);
        foreach (var (name, value) in attributes)
            if (value is not null)
            {
                _text.Append(' ').Append(name).Append("=\"");
                Escaped(value is decimal number ? Number(number) : value is int whole ? Number(whole) : (string)value);
                _text.Append('"');
            }

        _text.Append(end);
        return this;
    }

    private void Escaped(string words)
    {
        foreach (var rune in words.EnumerateRunes())
            _ = rune.Value switch
            {
                '&' => _text.Append("&amp;"),
                '<' => _text.Append("&lt;"),
                '>' => _text.Append("&gt;"),
                '"' => _text.Append("&quot;"),
                _ when rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value) => _text.Append('\uFFFD'), // XML cannot contain it, escaped or not
                _ => _text.Append(rune.ToString()),
            };
    }
}
