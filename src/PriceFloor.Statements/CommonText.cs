namespace PriceFloor.Statements;

/// <summary>What the texts of several lines of one payee have in common: whole words without the numbers, dates and codes among them.</summary>
public static class CommonText
{
    /// <summary>Longer texts have their common part at the beginning.</summary>
    private const int MostWords = 40;

    private const int FewestLetters = 3;

    /// <summary>The longest run of whole words that is in every text; null if no word is.</summary>
    public static string? Of(IEnumerable<string> texts)
    {
        var distinct = texts.Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        string? longest = null;
        foreach (var run in RunsOf(distinct[0]))
            if (InAll(run, distinct) is { } common && common.Length > (longest?.Length ?? 0))
                longest = common;
        return longest;
    }

    /// <summary>A pattern of the words in their order, whatever is between them; null if there are none.</summary>
    public static string? PatternOf(string text)
    {
        var pattern = "";
        foreach (var word in Words.PayeeWords(text))
            if (pattern.Length + 2 + word.Length <= Limits.NameLength)
                pattern += pattern.Length == 0 ? word : ".*" + word;
        return pattern.Length == 0 ? null : pattern.ToLowerInvariant();
    }

    /// <summary>The longest part of a run that every text has. It only ever gets shorter, so the texts are gone through once.</summary>
    private static string? InAll(string run, List<string> texts)
    {
        foreach (var text in texts)
        {
            if (text.Contains(run, StringComparison.OrdinalIgnoreCase))
                continue;
            if (PartsOf(run).FirstOrDefault(part => text.Contains(part, StringComparison.OrdinalIgnoreCase)) is not { } part)
                return null;
            run = part;
        }

        return run;
    }

    /// <summary>Runs of words without a digit, at most <see cref="Limits.NameLength"/> characters each.</summary>
    private static IEnumerable<string> RunsOf(string text)
    {
        var run = new List<string>();
        foreach (var word in text.Split(' ').Take(MostWords).Append("0"))
        {
            var ends = word.Any(char.IsDigit);
            if (!ends && run.Sum(one => one.Length + 1) + word.Length <= Limits.NameLength)
                run.Add(word);
            else
            {
                if (Trimmed(run) is { } whole)
                    yield return whole;
                run = ends ? [] : [word];
            }
        }
    }

    /// <summary>Shorter runs of whole words, longest first.</summary>
    private static IEnumerable<string> PartsOf(string run)
    {
        var words = run.Split(' ');
        return Enumerable.Range(0, words.Length).SelectMany(from => Enumerable.Range(1, words.Length - from), (from, count) => (from, count))
            .Select(part => Trimmed(words.Skip(part.from).Take(part.count))).OfType<string>().OrderByDescending(part => part.Length)
            .ThenBy(part => run.IndexOf(part, StringComparison.Ordinal));
    }

    /// <summary>Without marks at its ends; null if hardly any letter is left.</summary>
    private static string? Trimmed(IEnumerable<string> words)
    {
        var run = string.Join(' ', words).AsSpan();
        while (!run.IsEmpty && !char.IsLetter(run[0]))
            run = run[1..];
        while (!run.IsEmpty && !char.IsLetter(run[^1]))
            run = run[..^1];
        var letters = 0;
        foreach (var letter in run)
            letters += char.IsLetter(letter) ? 1 : 0;
        return letters >= FewestLetters && run.Length <= Limits.NameLength ? run.ToString() : null;
    }
}
