using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>
/// Neighbouring rules whose plain patterns are asked about at once: a line that matches none of them needs no more than one match. Most rules do not
/// take a line, so that saves most of the time.
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
            var patterns = rules.Skip(first).Take(Most).Select(rule => rule.TextMatches!)
                .TakeWhile(text => text is not null && PatternSize.Of(text).IsPlain).ToList();
            if (patterns.Count < Fewest)
                continue;
            groups[first] = new PatternGroup(first, patterns);
            first += patterns.Count - 1;
        }

        return groups;
    }

    private static Regex? Together(IReadOnlyList<string> patterns)
    {
        try
        {
            return KnownPatterns.Any(patterns);
        }
        catch (Exception e) when (e is NotSupportedException or RegexParseException)
        {
            return null;
        }
    }
}
