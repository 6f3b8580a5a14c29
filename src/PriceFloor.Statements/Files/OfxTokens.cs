namespace PriceFloor.Statements.Files;

/// <summary>
/// The tags of OFX 1.x, which is SGML: elements with a value need no end tag, with or without line breaks between them, and empty ones look like the
/// start of an aggregate. So nothing is nested here; <see cref="OfxStatements"/> knows the few aggregates that matter by name.
/// </summary>
internal sealed class OfxTokens(string text)
{
    private const int LongestName = 64;

    private int _at;
    private int _line = 1;

    public IEnumerable<OfxToken> Read()
    {
        while (_at < text.Length)
        {
            var line = _line;
            if (Tag() is { } tag)
                yield return tag;
            else if (Between() is var words && !string.IsNullOrWhiteSpace(words))
                yield return new OfxToken(OfxTokenKind.Text, words, line);
        }
    }

    /// <summary>A tag, or null without reading anything if none begins here.</summary>
    private OfxToken? Tag()
    {
        if (text[_at] != '<')
            return null;
        var closes = _at + 1 < text.Length && text[_at + 1] == '/';
        var from = _at + (closes ? 2 : 1);
        var length = text.AsSpan(from, int.Min(text.Length - from, LongestName + 1)).IndexOf('>');
        if (length < 1 || !IsName(text.AsSpan(from, length)))
            return null;
        _at = from + length + 1;
        return new OfxToken(closes ? OfxTokenKind.Close : OfxTokenKind.Open, text.Substring(from, length).Trim().ToUpperInvariant(), _line);
    }

    /// <summary>Everything up to the next tag; a "&lt;" that begins no tag is text.</summary>
    private string Between()
    {
        if (text.AsSpan(_at).StartsWith("<![CDATA["))
            return Marked("<![CDATA[".Length, "]]>");
        if (text.AsSpan(_at).StartsWith("<!--"))
        {
            Marked("<!--".Length, "-->");
            return "";
        }
        var length = text.AsSpan(_at + 1).IndexOf('<');
        var end = length < 0 ? text.Length : _at + 1 + length;
        return SgmlText.Of(Pass(_at, end, end));
    }

    private string Marked(int opening, string closing)
    {
        var from = _at + opening;
        var length = text.AsSpan(from).IndexOf(closing);
        return length < 0 ? Pass(from, text.Length, text.Length) : Pass(from, from + length, from + length + closing.Length);
    }

    private string Pass(int from, int to, int next)
    {
        _line += text.AsSpan(_at, next - _at).Count('\n');
        _at = next;
        return text[from..to];
    }

    /// <summary>Letters, digits and the dots of private tags; a trailing space is accepted.</summary>
    private static bool IsName(ReadOnlySpan<char> name)
    {
        if (!char.IsAsciiLetter(name[0]))
            return false;
        foreach (var character in name.TrimEnd())
            if (!char.IsAsciiLetterOrDigit(character) && character is not ('.' or '_' or '-'))
                return false;
        return true;
    }
}

internal enum OfxTokenKind { Open, Text, Close }

/// <summary>A token of OFX, in SGML and in XML alike.</summary>
/// <param name="Text">The name of a tag in capitals, or the words between tags.</param>
/// <param name="Line">The line of text in SGML; 0 in XML, where transactions are counted.</param>
internal readonly record struct OfxToken(OfxTokenKind Kind, string Text, int Line);
