using System.Collections;
using System.Data;
using System.Text.RegularExpressions;

namespace PriceFloor.Storage.Postgres;

/// <summary>A parameter of a statement, as the engine takes it: a list becomes an array.</summary>
internal sealed record Bound(string Name, object? Value, DbType? Type)
{
    /// <summary>The parameters of a statement that names a list; null if it can be bound as it is.</summary>
    public static List<Bound>? Of(string sql, object? parameters)
    {
        if (parameters is null || !sql.Contains(" IN @", StringComparison.Ordinal))
            return null;
        var named = parameters.GetType().GetProperties().Where(property => Names(sql, property.Name));
        return [.. named.Select(property => Of(property.Name, property.GetValue(parameters), property.PropertyType))];
    }

    /// <summary>Whether a statement names a parameter.</summary>
    public static bool Names(string sql, string name) =>
        Regex.IsMatch(sql, $@"@{name.TrimStart('@')}\b", RegexOptions.IgnoreCase, TimeSpan.FromSeconds(5));

    private static Bound Of(string name, object? value, Type type) => value switch
    {
        string or null => new(name, value, type == typeof(string) ? DbType.String : DbType.Int64),
        IEnumerable list => new(name, ArrayOf(list), null),
        _ => new(name, value, DbType.Int64),
    };

    private static Array ArrayOf(IEnumerable list) => list switch
    {
        IEnumerable<string> texts => texts.ToArray(),
        IEnumerable<long> numbers => numbers.ToArray(),
        _ => throw new ArgumentException($"A list of {list.GetType()} cannot be asked for.", nameof(list)),
    };
}
