using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>
/// Neighbouring rules whose patterns are asked about at once: a line that matches none of them needs no more than one match. Most rules do not take a
/// line, so that saves most of the time.
/// </summary>
internal sealed class PatternGroup
{
    /// <summary>Fewer are asked one by one, and so are the rest of more.</summary>
    private const int Fewest = 4, Most = 8;

    private PatternGroup(int first, IReadOnlyList<string> patterns)
    {
        (First, End) = (first, first + patterns.Count);
        Pattern = new(() => Together(patterns));
    }

    /// <summary>The place of its first rule.</summary>
    public int First { get; }

    /// <summary>The place behind its last rule.</summary>
    public int End { get; }

    /// <summary>The pattern of all of them; null if together they are too large for one.</summary>
    public Lazy<Regex?> Pattern { get; }

    /// <summary>The groups of some rules, each at the place of its first rule.</summary>
    public static PatternGroup?[] Of(IReadOnlyList<ReadingRule> rules)
    {
        var groups = new PatternGroup?[rules.Count];
        for (var first = 0; first < rules.Count; first++)
        {
            var patterns = rules.Skip(first).Take(Most).TakeWhile(rule => IsPlain(rule.TextMatches)).Select(rule => rule.TextMatches!).ToList();
            if (patterns.Count < Fewest)
                continue;
            groups[first] = new PatternGroup(first, patterns);
            first += patterns.Count - 1;
        }

        return groups;
    }

    /// <summary>Options inside a pattern might reach beyond it, so such a pattern stays alone.</summary>
    private static bool IsPlain(string? pattern) =>
        pattern is not null && !pattern.Replace("(?:", "", StringComparison.Ordinal).Contains("(?", StringComparison.Ordinal);

    private static Regex? Together(IReadOnlyList<string> patterns)
    {
        try
        {
            return KnownPatterns.Of(string.Join('|', patterns.Select(pattern => $"(?:{pattern})")));
        }
        catch (Exception e) when (e is NotSupportedException or RegexParseException)
        {
            return null;
        }
    }
}
