using System.Text;

namespace PriceFloor.Statements.Files;

/// <summary>Makes the text of a statement plain: white space and control characters become single spaces, direction marks go.</summary>
internal static class PlainText
{
    public const int LongestText = 500;

    private const int LongestId = 255, LongestAccount = 100;

    /// <summary>One text, at most <see cref="LongestText"/> characters. Most cells are plain already and stay as they are.</summary>
    public static string Of(string word) => word.Length <= LongestText && IsOneWord(word) ? word : Of([word], LongestText);

    /// <summary>All words one after another, at most <see cref="LongestText"/> characters.</summary>
    public static string Of(params IEnumerable<string?> words) => Of(words, LongestText);

    /// <summary>An id, or null if there is none; one that is too long counts as none, since a cut one would no longer be unique.</summary>
    public static string? Id(string? id) => Of([id], LongestId + 1) is { Length: > 0 and <= LongestId } plain && !SaysNone(plain) ? plain : null;

    public static string? Account(params IEnumerable<string?> parts) => Of(parts, LongestAccount) is { Length: > 0 } plain ? plain : null;

    /// <summary>Three letters in capitals; null if there is no currency, empty if there is one that cannot be valid.</summary>
    public static string? Currency(string? code)
    {
        if (string.IsNullOrEmpty(code))
            return null;
        var plain = Of([code], 8);
        if (plain.Length == 0)
            return null;
        return plain.Length == 3 && plain.All(char.IsAsciiLetter) ? plain.ToUpperInvariant() : "";
    }

    /// <summary>Whether it has only ASCII characters that can be seen, so there is nothing to make plain.</summary>
    private static bool IsOneWord(string word) => !word.AsSpan().ContainsAnyExceptInRange('!', '~');

    private static string Of(IEnumerable<string?> words, int longest)
    {
        var plain = new StringBuilder();
        foreach (var word in words)
        {
            if (plain.Length >= longest)
                break;
            Add(plain, word, longest);
        }
        if (plain.Length > longest)
            plain.Length = char.IsHighSurrogate(plain[longest - 1]) ? longest - 1 : longest;
        return plain.ToString().TrimEnd();
    }

    private static void Add(StringBuilder plain, string? word, int longest)
    {
        var apart = plain.Length > 0;
        foreach (var character in word ?? "")
        {
            if (plain.Length > longest)
                return;
            if (DirectionMarks.IsOne(character))
                continue;
            if (char.IsWhiteSpace(character) || char.IsControl(character))
            {
                apart = plain.Length > 0;
                continue;
            }
            if (apart)
                plain.Append(' ');
            apart = false;
            plain.Append(character);
        }
    }

    /// <summary>Placeholders of ISO 20022 and its predecessors for a reference that does not exist.</summary>
    private static bool SaysNone(string id) =>
        id.Equals("NOTPROVIDED", StringComparison.OrdinalIgnoreCase) || id.Equals("NONREF", StringComparison.OrdinalIgnoreCase);
}
