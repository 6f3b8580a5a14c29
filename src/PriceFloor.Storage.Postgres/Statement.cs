using System.Collections.Concurrent;
using System.Reflection;
using System.Text.RegularExpressions;

namespace PriceFloor.Storage.Postgres;

/// <summary>A statement as this engine takes it. What its text says is looked for once, and kept.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Names">The parameters that it names, without regard to case.</param>
/// <param name="HasList">Whether one of them is a list.</param>
internal sealed partial record Statement(string Text, IReadOnlySet<string> Names, bool HasList)
{
    /// <summary>Enough for every statement of the store; those that write numbers into their text are not kept beyond it.</summary>
    private const int Most = 1000;

    private static readonly ConcurrentDictionary<string, Statement> s_known = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> s_properties = new();

    public static Statement Of(string sql)
    {
        if (s_known.TryGetValue(sql, out var known))
            return known;
        var made = new Statement(Dialect.Of(sql), Parameter().Matches(sql).Select(match => match.Groups["name"].Value)
            .ToHashSet(StringComparer.OrdinalIgnoreCase), sql.Contains(" IN @", StringComparison.Ordinal));
        if (s_known.Count < Most)
            s_known.TryAdd(sql, made);
        return made;
    }

    /// <summary>The properties of an object with parameters.</summary>
    public static PropertyInfo[] PropertiesOf(object parameters) => s_properties.GetOrAdd(parameters.GetType(), type => type.GetProperties());

    [GeneratedRegex(@"@(?<name>\w+)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Parameter();
}
