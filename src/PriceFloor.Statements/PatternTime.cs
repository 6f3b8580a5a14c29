using System.Globalization;
using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>
/// The time that the patterns of reading rules have taken in one request. A hostile pattern takes as long as it is let: all of them together get five
/// seconds, and each a quarter of a second for a line.
/// </summary>
/// <param name="milliseconds">A monotonic clock that costs next to nothing to read.</param>
public sealed class PatternTime(Func<long> milliseconds)
{
    /// <summary>For all patterns of a request, including the last match.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(5);

    /// <summary>For one match, which nothing else can end.</summary>
    internal static readonly TimeSpan LongestMatch = TimeSpan.FromMilliseconds(250);

    /// <summary>Milliseconds for a group and a line, after which its patterns are tried one by one.</summary>
    private const int SlowGroup = 50;

    private readonly Dictionary<int, long> _taken = [];
    private readonly HashSet<int> _slowGroups = [];
    private long _all;

    /// <summary>Whether another match might exceed the time.</summary>
    public bool IsUp => _all > (Longest - LongestMatch).TotalMilliseconds;

    /// <summary>
    /// Whether a pattern, which is compiled when it is first needed, matches a text. Throws <see cref="SlowPatternException"/> once the time is up.
    /// </summary>
    internal bool Matches(int rule, Lazy<Regex> pattern, string text)
    {
        if (IsUp)
            throw Slow(_taken.MaxBy(one => one.Value).Key);
        var before = milliseconds();
        try
        {
            return pattern.Value.IsMatch(text);
        }
        catch (RegexMatchTimeoutException)
        {
            throw Slow(rule);
        }
        finally
        {
            Count(rule, milliseconds() - before);
        }
    }

    /// <summary>
    /// Whether a pattern of a group may match a text. Once that has taken long, it is true for this group from then on, so that each is tried alone
    /// and the slow one is named. Throws as <see cref="Matches"/> does.
    /// </summary>
    internal bool MayMatch(PatternGroup group, string text)
    {
        if (_slowGroups.Contains(group.First))
            return true;
        if (IsUp)
            throw Slow(_taken.MaxBy(one => one.Value).Key);
        var before = milliseconds();
        var pattern = group.Pattern.Value;
        var ready = milliseconds();
        try
        {
            return pattern?.IsMatch(text) ?? true;
        }
        catch (RegexMatchTimeoutException)
        {
            return true;
        }
        finally
        {
            var after = milliseconds();
            if (after - ready > SlowGroup)
                _slowGroups.Add(group.First);
            Count(group.First, after - before);
        }
    }

    private void Count(int rule, long took)
    {
        _taken[rule] = _taken.GetValueOrDefault(rule) + took;
        _all += took;
    }

    private static SlowPatternException Slow(int rule) => new(rule, string.Create(CultureInfo.InvariantCulture,
        $"The patterns of the reading rules took too long: {Longest.TotalSeconds:0} seconds in all, {LongestMatch.TotalMilliseconds:0} milliseconds "
        + $"for a line. The slowest is #/rules/{rule}/textMatches: make it shorter, with fewer repetitions such as .* or {{1,30}}, or use textHas."));
}

/// <summary>The patterns of reading rules took longer than they may; the message names the rule to fix.</summary>
public sealed class SlowPatternException(int rule, string message) : Exception(message)
{
    /// <summary>The place of the rule that took most time.</summary>
    public int Rule => rule;
}
