using System.Globalization;
using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>
/// Reading rules ready to use. Their patterns run within the <see cref="PatternTime"/> of a request.
/// </summary>
public sealed class ReadyRules
{
    private readonly IReadOnlyList<Ready> _rules;
    private readonly PatternGroup?[] _groups;

    private ReadyRules(ReadingRules document, IReadOnlyList<Ready> rules) =>
        (Document, _rules, _groups) = (document, rules, PatternGroup.Of(document.Rules));

    public ReadingRules Document { get; }

    /// <summary>No rules: every line stays unplaced.</summary>
    public static ReadyRules Empty { get; } = new(new ReadingRules { Rules = [] }, []);

    /// <summary>
    /// Rules whose patterns have been checked; each is compiled when it is first needed, since that takes time too, and known from then on.
    /// </summary>
    public static ReadyRules Of(ReadingRules document) => new(document, [.. document.Rules.Select(rule =>
        new Ready(rule, rule.TextHas is { } part ? Words.Single(part) : null,
            rule.TextMatches is { } text ? new Lazy<Regex>(() => KnownPatterns.Of(text)) : null))]);

    /// <summary>The faults of the patterns of rules (<c>bad-pattern</c>).</summary>
    public static IEnumerable<Fault> FaultsOf(ReadingRules document) => document.Rules.Index()
        .Select(rule => (rule.Index, Fault: rule.Item.TextMatches is { } text ? FaultOf(text) : null))
        .Where(rule => rule.Fault is not null)
        .Select(rule => new Fault(FormattableString.Invariant($"/rules/{rule.Index}/textMatches"), FileCodes.BadPattern, rule.Fault!));

    /// <summary>The place of the first rule that matches, or null. Throws <see cref="SlowPatternException"/>.</summary>
    /// <param name="transaction">The line.</param>
    /// <param name="time">The time that the patterns of this request may still take.</param>
    public int? FirstFor(Transaction transaction, PatternTime time)
    {
        for (var index = 0; index < _rules.Count; index++)
            if (_groups[index] is { } group && !time.MayMatch(group, transaction.Text))
                index = group.End - 1;
            else if (_rules[index] is var rule && rule.Fits(transaction)
                    && (rule.Pattern is not { } pattern || time.Matches(index, pattern, transaction.Text)))
                return index;
        return null;
    }

    private static string? FaultOf(string text)
    {
        try
        {
            KnownPatterns.Check(text);
            return null;
        }
        catch (NotSupportedException)
        {
            return "textMatches uses look-around, a back reference, an atomic group or too large a repetition; say it without, or use textHas.";
        }
        catch (RegexParseException e)
        {
            return string.Create(CultureInfo.InvariantCulture, $"textMatches is not a regular expression: see its character {e.Offset}. "
                + $"Put a backslash before a dot, bracket or plus sign that is meant literally.");
        }
    }

    private sealed record Ready(ReadingRule Rule, string? Part, Lazy<Regex>? Pattern)
    {
        /// <summary>All conditions of the rule except its pattern.</summary>
        public bool Fits(Transaction transaction)
        {
            var amount = decimal.Abs(transaction.Amount);
            return (Rule.Paid is not { } paid || paid == transaction.Paid)
                && !(amount < Rule.Least) && !(amount > Rule.Most)
                && (Part is null || transaction.Text.Contains(Part, StringComparison.OrdinalIgnoreCase));
        }
    }
}
