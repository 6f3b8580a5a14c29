namespace PriceFloor.Pricing.Changes;

/// <summary>
/// A JSON Pointer (RFC 6901): <c>/expenses/Bench rent/amount</c> has three tokens. In a token <c>~1</c> is a slash and <c>~0</c> a tilde.
/// </summary>
public sealed record DocumentPointer
{
    private DocumentPointer(string text, IReadOnlyList<string> tokens) => (Text, Tokens) = (text, tokens);

    /// <summary>As it was written.</summary>
    public string Text { get; }

    /// <summary>The tokens, unescaped; none for the whole document.</summary>
    public IReadOnlyList<string> Tokens { get; }

    /// <summary>Null if the text is no pointer: it is empty or begins with a slash, and after a tilde comes 0 or 1.</summary>
    public static DocumentPointer? Find(string text)
    {
        if (text.Length == 0)
            return new DocumentPointer(text, []);
        if (text[0] != '/')
            return null;
        var tokens = text[1..].Split('/');
        return Array.TrueForAll(tokens, IsEscaped) ? new DocumentPointer(text, Array.ConvertAll(tokens, Unescaped)) : null;
    }

    /// <summary>A name as a token.</summary>
    public static string Escape(string name) => name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    public bool Equals(DocumentPointer? other) => other?.Text == Text;

    public override int GetHashCode() => Text.GetHashCode(StringComparison.Ordinal);

    private static string Unescaped(string token) => token.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);

    private static bool IsEscaped(string token)
    {
        for (var i = 0; i < token.Length; i++)
            if (token[i] == '~' && (i + 1 == token.Length || token[i + 1] is not ('0' or '1')))
                return false;
        return true;
    }
}
