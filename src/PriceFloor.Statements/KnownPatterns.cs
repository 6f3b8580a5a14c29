using System.Collections.Concurrent;
using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>
/// Patterns of reading rules that were compiled before. Compiling one takes as long as matching a year of lines, and the same rules come with each
/// request. They are held weakly: when memory is needed, they go, so no number of patterns can fill it.
/// </summary>
internal static class KnownPatterns
{
    private const int Most = 2_000;

    private static readonly ConcurrentDictionary<string, WeakReference<Regex>> s_known = new(StringComparer.Ordinal);

    /// <summary>
    /// The compiled pattern. A small one (<see cref="PatternSize"/>) runs without backtracking, so its time grows only with the text. Any other is
    /// tried with backtracking, which a time limit ends; without, a hostile one can fill the memory within one match, where no time limit looks.
    /// Throws as <see cref="Regex"/> does if the text is no pattern.
    /// </summary>
    public static Regex Of(string text) => Known(text, PatternSize.Of(text).IsSmall);

    /// <summary>One pattern that a text matches if it matches any of these plain ones. Throws if together they are too large for one.</summary>
    public static Regex Any(IReadOnlyList<string> plain) => Known(string.Join('|', plain.Select(pattern => $"(?:{pattern})")), isSmall: true);

    /// <summary>Throws as <see cref="Regex"/> does if the text is no pattern that could do without backtracking.</summary>
    public static void Check(string text) => _ = Made(text, isSmall: true);

    private static Regex Known(string text, bool isSmall)
    {
        if (s_known.TryGetValue(text, out var held) && held.TryGetTarget(out var known))
            return known;
        var made = Made(text, isSmall);
        if (s_known.Count >= Most)
            s_known.Clear();
        s_known[text] = new WeakReference<Regex>(made);
        return made;
    }

    private static Regex Made(string text, bool isSmall) => new(text,
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | (isSmall ? RegexOptions.NonBacktracking : RegexOptions.None),
        PatternTime.LongestMatch);
}
