using System.Globalization;

namespace PriceFloor.Api.Pictures;

/// <summary>The width of words in a font that nobody here knows: estimated on the wide side, so nothing runs into its neighbour.</summary>
public static class TextMetrics
{
    /// <summary>In pixels, at a font size in pixels.</summary>
    public static decimal Width(string words, decimal size, bool bold = false) => Letters(words).Sum(WidthOf) * size * (bold ? 1.1m : 1);

    /// <summary>The words, cut with an ellipsis if they would be wider.</summary>
    public static string Into(decimal width, string words, decimal size, bool bold = false)
    {
        if (Width(words, size, bold) <= width)
            return words;
        var kept = Letters(words).ToList();
        while (kept.Count > 0 && Width(string.Concat(kept) + "…", size, bold) > width)
            kept.RemoveAt(kept.Count - 1);
        return string.Concat(kept).TrimEnd() + "…";
    }

    /// <summary>The words in lines, none of them wider. A word that is wider by itself is broken between two letters.</summary>
    public static IReadOnlyList<string> Lines(decimal width, string words, decimal size, bool bold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in words.Split(' '))
        {
            var joined = line.Length == 0 ? word : $"{line} {word}";
            if (Width(joined, size, bold) <= width)
            {
                line = joined;
                continue;
            }

            if (line.Length > 0)
                lines.Add(line);
            var pieces = Broken(width, word, size, bold);
            lines.AddRange(pieces.SkipLast(1));
            line = pieces[^1];
        }

        return [.. lines, line];
    }

    private static List<string> Broken(decimal width, string word, decimal size, bool bold)
    {
        List<string> pieces = [""];
        foreach (var letter in Letters(word))
            if (pieces[^1].Length == 0 || Width(pieces[^1] + letter, size, bold) <= width)
                pieces[^1] += letter;
            else
                pieces.Add(letter);
        return pieces;
    }

    private static IEnumerable<string> Letters(string words)
    {
        var letters = StringInfo.GetTextElementEnumerator(words);
        while (letters.MoveNext())
            yield return letters.GetTextElement();
    }

    private static decimal WidthOf(string letter) => letter[0] switch
    {
        'i' or 'j' or 'l' or 'I' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' or ' ' => 0.34m,
        'f' or 'r' or 't' or '(' or ')' or '-' or '/' => 0.43m,
        'm' or 'w' or 'M' or 'W' or '@' or '%' or '…' => 0.98m,
        >= '0' and <= '9' => 0.64m,
        >= 'A' and <= 'Z' => 0.73m,
        < '\u0500' => 0.62m,
        _ => 1.05m, // other scripts are mostly square
    };
}
