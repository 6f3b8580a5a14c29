namespace PriceFloor.Statements.Files;

/// <summary>The headings of a sheet, as a message says them, so that its reader can name the right ones.</summary>
internal static class FoundHeadings
{
    private const int Shown = 20, LongestName = 40;

    /// <summary>The parameters that name the columns that every sheet needs.</summary>
    public const string Parameters = "?dateColumn=, ?amountColumn= (or ?inColumn= and ?outColumn=) and ?textColumn=";

    /// <summary>The headings in a row, each in quotes.</summary>
    public static string In(IReadOnlyList<string> cells)
    {
        var named = cells.Select(cell => PlainText.Of(cell)).Where(name => name.Length > 0)
            .Select(name => $"\"{(name.Length > LongestName ? name[..LongestName] + "..." : name)}\"").ToList();
        return string.Join(", ", named.Take(Shown)) + (named.Count > Shown ? FormattableString.Invariant($" and {named.Count - Shown} more") : "");
    }

    public static bool HasDigits(IReadOnlyList<string> cells) => cells.Any(cell => cell.Any(char.IsDigit));

    /// <summary>
    /// The first row of several cells, by the separator that finds most of them, if it may be one of headings: a row with a digit is a line of
    /// the bank's, which no message repeats.
    /// </summary>
    /// <param name="text">The file.</param>
    /// <param name="most">How many lines may be above it.</param>
    public static (IReadOnlyList<string> Cells, char Separator)? First(string text, int most)
    {
        (IReadOnlyList<string> Cells, char Separator)? best = null;
        foreach (var separator in new[] { ',', ';', '\t' })
            if (new SheetRows(text, separator).Read().Take(most + 1).Select(row => row.Cells)
                    .FirstOrDefault(cells => cells?.Count(cell => cell.Length > 0) > 1) is { } cells && cells.Count > (best?.Cells.Count ?? 0))
                best = (cells, separator);
        return best is { } found && !HasDigits(found.Cells) ? found : null;
    }
}
