using PriceFloor.Statements;

namespace PriceFloor.Evidence.Sheets;

internal static class SheetLines
{
    /// <summary>All lines, or the fault that there are too many.</summary>
    public static Outcome<List<T>> All<T>(IEnumerable<T> lines)
    {
        var all = lines.Take(LogRanges.MostLines + 1).ToList();
        return all.Count > LogRanges.MostLines
            ? new Fault("", FileCodes.TooMany,
                "The sheet has more than 200,000 lines; send it in parts, such as a year each, with every order whole.")
            : all;
    }
}
