using System.Globalization;

namespace PriceFloor.Statements.Files;

/// <summary>
/// Dates as sheets write them. Year first and English months in words are always read; any other order only if it is given, since 03/04 is a day in
/// March or in April.
/// </summary>
internal static class SheetDate
{
    private const int FirstYear = 1970, LastYear = 2199;

    /// <returns>Null if <paramref name="date"/> was read, else why not.</returns>
    public static LineFault? Read(ReadOnlySpan<char> cell, DateOrder? order, out DateOnly date)
    {
        date = default;
        if (MonthInWords.Read(cell, order, out date) is { } inWords)
            return inWords.Fault;
        cell = WithoutTime(cell.Trim());
        if (cell.Length == 8 && !cell.ContainsAnyExceptInRange('0', '9'))
            return Day(cell[..4], cell[4..6], cell[6..], out date);
        if (!Parts(cell, out var first, out var second, out var third))
            return LineFault.BadDate;
        if (first.Length == 4)
            return Day(first, second, third, out date);
        return order switch
        {
            DateOrder.DayMonthYear => Day(third, second, first, out date),
            DateOrder.MonthDayYear => Day(third, first, second, out date),
            DateOrder.YearMonthDay => Day(first, second, third, out date),
            _ => LineFault.AmbiguousDate,
        };
    }

    /// <summary>The orders in which a date without a year of four digits in front is a day of the calendar, each with the year.</summary>
    public static IEnumerable<(DateOrder Order, int Year)> OrdersOf(string cell)
    {
        DateOrder[] orders = [DateOrder.DayMonthYear, DateOrder.MonthDayYear, DateOrder.YearMonthDay];
        foreach (var order in orders)
            if (Read(cell, null, out _) == LineFault.AmbiguousDate && Read(cell, order, out var date) is null)
                yield return (order, date.Year);
    }

    /// <summary>A day of the calendar of 1970 to 2199; two digits are years from 2000.</summary>
    public static LineFault? Day(ReadOnlySpan<char> year, ReadOnlySpan<char> month, ReadOnlySpan<char> day, out DateOnly date)
    {
        date = default;
        if (year.Length is not (2 or 4) || !Number(year, out var y) || !Number(month, out var m) || !Number(day, out var d))
            return LineFault.BadDate;
        y += year.Length == 2 ? 2000 : 0;
        if (y is < FirstYear or > LastYear || m is < 1 or > 12 || d < 1 || d > DateTime.DaysInMonth(y, m))
            return LineFault.BadDate;
        date = new DateOnly(y, m, d);
        return null;
    }

    private static ReadOnlySpan<char> WithoutTime(ReadOnlySpan<char> cell)
    {
        var end = cell.IndexOfAny(' ', 'T');
        return end > 0 && cell[(end + 1)..] is [>= '0' and <= '9', ..] ? cell[..end] : cell;
    }

    private static bool Parts(ReadOnlySpan<char> cell, out ReadOnlySpan<char> first, out ReadOnlySpan<char> second, out ReadOnlySpan<char> third)
    {
        first = second = third = [];
        var one = cell.IndexOfAny('-', '/', '.');
        if (one < 1)
            return false;
        var two = cell[(one + 1)..].IndexOf(cell[one]);
        if (two < 1)
            return false;
        first = cell[..one];
        second = cell.Slice(one + 1, two);
        third = cell[(one + two + 2)..];
        return first.Length is 1 or 2 or 4 && second.Length is 1 or 2 && third.Length is 1 or 2 or 4
            && !first.ContainsAnyExceptInRange('0', '9') && !second.ContainsAnyExceptInRange('0', '9') && !third.ContainsAnyExceptInRange('0', '9');
    }

    private static bool Number(ReadOnlySpan<char> digits, out int number) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
