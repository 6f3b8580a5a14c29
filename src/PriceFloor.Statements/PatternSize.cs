using System.Globalization;

namespace PriceFloor.Statements;

/// <summary>
/// How much there is to choose in a pattern: its groups, classes and repetitions, each as often as it is repeated at most. Without backtracking the
/// states of a pattern may double with each choice, so only a pattern with few is run that way.
/// </summary>
public sealed class PatternSize
{
    /// <summary>An automaton of tens of megabytes at most, whatever the text.</summary>
    private const int MostAlone = 24;

    /// <summary>Eight of these together need a few megabytes at most.</summary>
    private const int MostTogether = 8;

    private readonly string _pattern;
    private int _choices;
    private long _times = 1;
    private bool _repeats;
    private bool _isKnown = true;

    private PatternSize(string pattern) => _pattern = pattern;

    /// <summary>Whether it is small enough to run without backtracking.</summary>
    public bool IsSmall => _isKnown && _choices * _times <= MostAlone;

    /// <summary>
    /// Whether it is small enough for that beside others: words and a few choices, such as <c>(studio|workshop) rent|werkstattmiete</c>.
    /// </summary>
    public bool IsPlain => _isKnown && !_repeats && _choices <= MostTogether;

    /// <summary>Takes any text; whether it is a pattern at all, its compilation tells.</summary>
    public static PatternSize Of(string pattern)
    {
        var size = new PatternSize(pattern);
        for (var i = 0; i < pattern.Length; i++)
            i = size.Count(i);
        return size;
    }

    /// <summary>Counts what stands at a place; the last place that belongs to it.</summary>
    private int Count(int i)
    {
        switch (_pattern[i])
        {
            case '*' or '+' or '.':
                _repeats = true;
                _choices++;
                return i;
            case '(' when _pattern.AsSpan(i).StartsWith("(?"):
                _isKnown &= _pattern.AsSpan(i).StartsWith("(?:"); // an option inside might reach beyond this pattern
                _choices++;
                return i + 2;
            case '(' or '[' or '?':
                _choices++;
                return i;
            case '\\':
                _choices += i + 1 < _pattern.Length && char.IsAsciiLetterOrDigit(_pattern[i + 1]) && _pattern[i + 1] != 'b' ? 1 : 0;
                return i + 1;
            case '{':
                return Times(i);
            default:
                return i;
        }
    }

    private int Times(int open)
    {
        _repeats = true;
        var (close, most) = (_pattern.IndexOf('}', open), 1);
        if (close < 0)
            return open;
        foreach (var bound in _pattern[(open + 1)..close].Split(','))
            if (bound.Length > 0)
                most = int.Max(most, int.TryParse(bound, NumberStyles.None, CultureInfo.InvariantCulture, out var times) ? times : MostAlone + 1);
        _times = long.Min(int.MaxValue, _times * most);
        return close;
    }
}
