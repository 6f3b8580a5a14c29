using System.Runtime.InteropServices;

namespace PriceFloor.Statements.Files;

/// <summary>
/// Dates with an English month: 4 March 2027, 04-Mar-27, March 4, 2027, 2027-Mar-04. A month in words leaves no doubt about the order.
/// </summary>
internal static class MonthInWords
{
    private const string Between = " -/.,";

    private static readonly string[] s_months = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
        "november", "december"];

    private static readonly string[] s_ordinals = ["st", "nd", "rd", "th"];

    /// <summary>Null if the cell has no English month among its first two words.</summary>
    public static DateInWords? Read(ReadOnlySpan<char> cell, DateOrder? order, out DateOnly date)
    {
        date = default;
        if (!cell.ContainsAnyInRange('A', 'z'))
            return null;
        var words = cell.ToString().Split(Between.ToCharArray(), 6, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length < 3)
            return null;
        var (first, second) = (MonthOf(words[0]), MonthOf(words[1]));
        if (first is null && second is null)
            return null;
        if (!words.Skip(3).All(IsTime))
            return new DateInWords(LineFault.BadDate);
        var isYearFirst = words[0].Length == 4 || order == DateOrder.YearMonthDay;
        return new DateInWords(first is { } month ? Day(words[2], month, words[1], out date)
            : isYearFirst ? Day(words[0], second!.Value, words[2], out date)
            : Day(words[2], second!.Value, words[0], out date));
    }

    private static LineFault? Day(string year, int month, string day, out DateOnly date)
    {
        if (s_ordinals.Any(end => day.EndsWith(end, StringComparison.OrdinalIgnoreCase)))
            day = day[..^2];
        return SheetDate.Day(year, month.ToString("00", System.Globalization.CultureInfo.InvariantCulture), day, out date);
    }

    /// <summary>The number of a month by its name or the first three letters of it, or "Sept".</summary>
    private static int? MonthOf(string word)
    {
        if (word.Length < 3)
            return null;
        var month = Array.FindIndex(s_months, name => name.Equals(word, StringComparison.OrdinalIgnoreCase)
            || name.AsSpan(0, 3).Equals(word, StringComparison.OrdinalIgnoreCase)
            || (name.Length == 9 && name.AsSpan(0, 4).Equals(word, StringComparison.OrdinalIgnoreCase)));
        return month < 0 ? null : month + 1;
    }

    private static bool IsTime(string word) => word.Contains(':') || word.Equals("am", StringComparison.OrdinalIgnoreCase)
        || word.Equals("pm", StringComparison.OrdinalIgnoreCase);
}

/// <summary>A date with a month in words.</summary>
/// <param name="Fault">Why it is no day; null if it is one.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DateInWords(LineFault? Fault);
