namespace PriceFloor.Evidence.Sheets;

/// <summary>An order of lines that does not depend on where they stand in a sheet.</summary>
internal static class LineOrder
{
    /// <summary>Short ids before long ones, so that line 2 of an order comes before line 10; none comes first.</summary>
    public static int Refs(string? one, string? other) =>
        one is null || other is null || one.Length == other.Length ? string.CompareOrdinal(one, other) : one.Length.CompareTo(other.Length);

    /// <summary>The first comparison that finds a difference.</summary>
    public static int First(ReadOnlySpan<int> order) => order.IndexOfAnyExcept(0) is >= 0 and var at ? order[at] : 0;
}
