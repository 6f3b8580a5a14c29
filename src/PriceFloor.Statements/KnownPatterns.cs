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

    /// <summary>The compiled pattern. It runs without backtracking. Throws as <see cref="Regex"/> does if the text is no such pattern.</summary>
    public static Regex Of(string text)
    {
        if (s_known.TryGetValue(text, out var held) && held.TryGetTarget(out var known))
            return known;
        var made = new Regex(text, RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, PatternTime.LongestMatch);
        if (s_known.Count >= Most)
            s_known.Clear();
        s_known[text] = new WeakReference<Regex>(made);
        return made;
    }
}
