namespace PriceFloor.Api.Differences;

/// <summary>What the items of a list are called: by their noun and name, and which of several if they share it.</summary>
internal static class ItemNames
{
    /// <summary>The items by what they are called, in their order.</summary>
    public static Dictionary<string, object> Of(Type type, IEnumerable<object> items, ValueWords values)
    {
        var called = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            var name = FieldWords.NameOf(type, item, values);
            var unique = name;
            for (var count = 2; !called.TryAdd(unique, item); count++)
                unique = FormattableString.Invariant($"{name} (number {count} of this name)");
        }

        return called;
    }
}
