using System.Text;

namespace PriceFloor.Statements.Files;

/// <summary>The words of a statement made plain: white space and control characters become single spaces, direction marks go.</summary>
internal static class PlainText
{
    public const int LongestText = 500;

    private const int LongestId = 255, LongestAccount = 100;

    /// <summary>All words in a row, at most <see cref="LongestText"/> characters.</summary>
    public static string Of(params IEnumerable<string?> words) => Of(words, LongestText);

    /// <summary>An id, or null where there is none; one too long to be an id is none, since a cut one would no longer be unique.</summary>
    public static string? Id(string? id) => Of([id], LongestId + 1) is { Length: > 0 and <= LongestId } plain && !SaysNone(plain) ? plain : null;

    public static string? Account(params IEnumerable<string?> parts) => Of(parts, LongestAccount) is { Length: > 0 } plain ? plain : null;

    /// <summary>Three letters in capitals, null where nothing is said, empty where something is said that no currency can be.</summary>
    public static string? Currency(string? code)
    {
        var plain = Of([code], 8);
        if (plain.Length == 0)
            return null;
        return plain.Length == 3 && plain.All(char.IsAsciiLetter) ? plain.ToUpperInvariant() : "";
    }

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

    /// <summary>What ISO 20022 and its forerunners write where a reference must stand and there is none.</summary>
    private static bool SaysNone(string id) =>
        id.Equals("NOTPROVIDED", StringComparison.OrdinalIgnoreCase) || id.Equals("NONREF", StringComparison.OrdinalIgnoreCase);
}
