using System.Collections;
using System.Data;

namespace PriceFloor.Storage.Postgres;

/// <summary>A parameter of a statement, as the engine takes it: a list becomes an array.</summary>
internal sealed record Bound(string Name, object? Value, DbType? Type)
{
    /// <summary>The parameters of a statement that names a list; null if it can be bound as it is.</summary>
    public static IEnumerable<Bound>? Of(Statement statement, object? parameters) => parameters is null || !statement.HasList ? null
        : Statement.PropertiesOf(parameters).Where(property => statement.Names.Contains(property.Name))
            .Select(property => Of(property.Name, property.GetValue(parameters), property.PropertyType));

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
