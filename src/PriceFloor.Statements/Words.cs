using System.Text;

namespace PriceFloor.Statements;

/// <summary>The words of a statement's line.</summary>
public static class Words
{
    /// <summary>Single spaces, none at the ends; control characters count as white space, direction marks are dropped.</summary>
    public static string Single(string text)
    {
        var words = new StringBuilder(text.Length);
        foreach (var letter in text)
            if (DirectionMarks.IsOne(letter))
                continue;
            else if (!char.IsWhiteSpace(letter) && !char.IsControl(letter))
                words.Append(letter);
            else if (words.Length > 0 && words[^1] != ' ')
                words.Append(' ');
        return words.ToString().TrimEnd();
    }

    /// <summary>
    /// The common part of two lines of the same payee: words of letters alone, in capitals, without numbers, dates and branch codes.
    /// </summary>
    public static string PayeeKey(string text) => string.Join(' ', PayeeWords(text));

    /// <summary>The words of at least three letters.</summary>
    public static IEnumerable<string> PayeeWords(string text)
    {
        var start = -1;
        for (var at = 0; at <= text.Length; at++)
        {
            var inside = at < text.Length && char.IsLetter(text[at]);
            if (inside && start < 0)
                start = at;
            else if (!inside && start >= 0)
            {
                if (at - start >= 3)
                    yield return text[start..at].ToUpperInvariant();
                start = -1;
            }
        }
    }
}
