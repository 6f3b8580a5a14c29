using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>
/// Reading rules ready to be tried. Patterns run without backtracking, so that their time grows with the text alone, and each match
/// has a limit besides.
/// </summary>
public sealed class ReadyRules
{
    private static readonly TimeSpan s_longestMatch = TimeSpan.FromMilliseconds(250);

    private readonly IReadOnlyList<Ready> _rules;

    private ReadyRules(ReadingRules document, IReadOnlyList<Ready> rules) => (Document, _rules) = (document, rules);

    public ReadingRules Document { get; }

    /// <summary>No rules: every line stays unplaced.</summary>
    public static ReadyRules Empty { get; } = new(new ReadingRules { Rules = [] }, []);

    /// <summary>The rules, or what stands against their patterns (<c>bad-pattern</c>).</summary>
    public static Outcome<ReadyRules> Of(ReadingRules document)
    {
        var faults = new List<Fault>();
        var ready = new List<Ready>();
        foreach (var (index, rule) in document.Rules.Index())
        {
            var (pattern, fault) = rule.TextMatches is { } text ? Pattern(text) : (null, null);
            if (fault is not null)
                faults.Add(new Fault(FormattableString.Invariant($"/rules/{index}/textMatches"), "bad-pattern", fault));
            ready.Add(new Ready(rule, rule.TextHas is { } part ? Words.Single(part) : null, pattern));
        }

        return faults.Count > 0 ? faults : new ReadyRules(document, ready);
    }

    /// <summary>The place of the first rule that matches, or null.</summary>
    public int? FirstFor(Transaction transaction)
    {
        for (var index = 0; index < _rules.Count; index++)
            if (_rules[index].Matches(transaction))
                return index;
        return null;
    }

    private static (Regex? Pattern, string? Fault) Pattern(string text)
    {
        try
        {
            return (new Regex(text, RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, s_longestMatch), null);
        }
        catch (NotSupportedException)
        {
            return (null, "textMatches uses look-around, a back reference, an atomic group or too large a repetition; say it without, or use textHas.");
        }
        catch (RegexParseException e)
        {
            return (null, FormattableString.Invariant($"textMatches is no regular expression: see its character {e.Offset}. A dot, bracket or plus sign that is meant as itself has a backslash before it."));
        }
    }

    private sealed record Ready(ReadingRule Rule, string? Part, Regex? Pattern)
    {
        public bool Matches(Transaction transaction)
        {
            var amount = decimal.Abs(transaction.Amount);
            return (Rule.Paid is not { } paid || paid == transaction.Paid)
                && !(amount < Rule.Least) && !(amount > Rule.Most)
                && (Part is null || transaction.Text.Contains(Part, StringComparison.OrdinalIgnoreCase))
                && Pattern?.IsMatch(transaction.Text) != false;
        }
    }
}
