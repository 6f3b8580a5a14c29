namespace PriceFloor.Statements.Files;

/// <summary>
/// The dates of one sheet. If the caller gives no order of day and month, a line that has only one reading proves it for the whole file: 31/12/2027
/// shows that the day is first.
/// </summary>
/// <param name="said">The order that the caller gives.</param>
/// <param name="cells">All cells with dates, read only if a date could be read in two ways.</param>
internal sealed class SheetDates(DateOrder? said, Func<IEnumerable<string>> cells)
{
    /// <summary>No statement spans more years, so an order of dates with two-digit years by which it would is not the file's.</summary>
    private const int MostYears = 10;

    private readonly Lazy<DateOrder?> _proven = new(() => Proven(cells()));

    /// <returns>Null if <paramref name="date"/> was read, else why not.</returns>
    public LineFault? Read(string cell, out DateOnly date)
    {
        var fault = SheetDate.Read(cell, said, out date);
        if (fault != LineFault.AmbiguousDate)
            return fault;
        if (_proven.Value is { } order)
            return SheetDate.Read(cell, order, out date);
        // The lines of a file that has both orders prove nothing for each other, but some have only one reading.
        return SheetDate.OrdersOf(cell).ToList() switch
        {
            [] => LineFault.BadDate,
            [var only] => SheetDate.Read(cell, only.Order, out date),
            _ => LineFault.AmbiguousDate,
        };
    }

    private static DateOrder? Proven(IEnumerable<string> cells)
    {
        HashSet<DateOrder>? left = null;
        var years = new Dictionary<DateOrder, (int First, int Last)>();
        foreach (var cell in cells)
        {
            var orders = SheetDate.OrdersOf(cell).ToList();
            if (orders.Count == 0)
                continue;
            left ??= [.. Enum.GetValues<DateOrder>()];
            left.IntersectWith(orders.Select(one => one.Order));
            foreach (var (order, year) in orders)
                years[order] = years.TryGetValue(order, out var known) ? (int.Min(known.First, year), int.Max(known.Last, year)) : (year, year);
        }

        if (left is { Count: > 1 })
            left.RemoveWhere(order => years[order].Last - years[order].First > MostYears);
        return left is { Count: 1 } ? left.Single() : null;
    }
}
