namespace PriceFloor.Evidence.Lines;

/// <summary>Lines in order. Those of the store mostly are already, and then are only looked through.</summary>
public static class InOrder
{
    /// <summary>The lines in an order; equals stay as they were.</summary>
    public static IReadOnlyList<T> Of<T>(IEnumerable<T> lines, Comparison<T> order)
    {
        var all = lines as IReadOnlyList<T> ?? [.. lines];
        for (var i = 1; i < all.Count; i++)
            if (order(all[i - 1], all[i]) > 0)
                return [.. all.Order(Comparer<T>.Create(order))];
        return all;
    }

    /// <summary>By day, and within a day as they came.</summary>
    public static int ByDay(Movement one, Movement other) =>
        one.On != other.On ? one.On.CompareTo(other.On) : one.Position.CompareTo(other.Position);

    /// <summary>Lines of two lists that are in an order each; of equals those of the first list come first.</summary>
    public static IReadOnlyList<T> Of<T>(IReadOnlyList<T> one, IReadOnlyList<T> other, Comparison<T> order)
    {
        if (other.Count == 0)
            return one;
        var (all, next) = (new List<T>(one.Count + other.Count), 0);
        foreach (var line in one)
        {
            while (next < other.Count && order(other[next], line) < 0)
                all.Add(other[next++]);
            all.Add(line);
        }

        all.AddRange(other.Skip(next));
        return all;
    }
}
