using System.Reflection;
using PriceFloor.Statements;

namespace PriceFloor.Api.Http.Reading;

/// <summary>Properties that GET adds to a document and PUT ignores, so the answer of GET can be PUT back.</summary>
public static class ReadOnlyFields
{
    private static readonly Dictionary<Type, HashSet<string>> s_fields = new()
    {
        [typeof(CostProfile)] = ["key", "revision", "savedAt"],
        [typeof(Design)] = ["key", "revision", "savedAt"],
        [typeof(Channel)] = ["key", "revision", "savedAt"],
        [typeof(ListedPrice)] = ["sku", "channel", "alias", "revision", "savedAt"],
        [typeof(ReadingRules)] = ["key", "revision", "savedAt"],
        [typeof(StatementLayout)] = ["key", "revision", "savedAt"],
        [typeof(QuoteTerms)] = ["key", "revision", "savedAt", "state", "issuedAt", "supersededBy"],
        [typeof(QuoteOutcome)] = ["key", "revision", "savedAt"],
        [typeof(QuoteActual)] = ["key", "revision", "savedAt"],
        [typeof(Plan)] = ["key", "revision", "savedAt"],
    };

    public static IReadOnlySet<string> Of(Type type) =>
        s_fields.TryGetValue(type.BaseType == typeof(QuoteTerms) ? typeof(QuoteTerms) : type, out var fields) ? fields
        : type.GetCustomAttribute<ReadOnlyFieldsAttribute>() is { } named ? named.Names.ToHashSet() : [];
}

/// <summary>Says it of a document whose type the reader does not know.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ReadOnlyFieldsAttribute(params string[] names) : Attribute
{
    public IReadOnlyList<string> Names => names;
}
