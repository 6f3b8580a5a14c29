using System.Globalization;

namespace PriceFloor.Statements.Files;

/// <summary>The sign or the code of a currency beside an amount: $12.50, 12,50 €, EUR 12.50.</summary>
internal static class CurrencyMark
{
    /// <summary>The signs that people write for a currency. A sign means the currency of the line or of the draft; it never chooses one.</summary>
    private static readonly Dictionary<string, string[]> s_signs = new()
    {
        ["EUR"] = ["€"],
        ["GBP"] = ["£"],
        ["USD"] = ["$", "US$"],
        ["CAD"] = ["$", "C$", "CA$"],
        ["AUD"] = ["$", "A$", "AU$"],
        ["NZD"] = ["$", "NZ$"],
        ["SGD"] = ["$", "S$"],
        ["HKD"] = ["$", "HK$"],
        ["TWD"] = ["$", "NT$"],
        ["MXN"] = ["$", "MX$"],
        ["ARS"] = ["$"],
        ["CLP"] = ["$"],
        ["COP"] = ["$"],
        ["BRL"] = ["R$"],
        ["JPY"] = ["¥", "￥", "円"],
        ["CNY"] = ["¥", "￥", "元"],
        ["CHF"] = ["Fr", "SFr"],
        ["SEK"] = ["kr"],
        ["NOK"] = ["kr"],
        ["DKK"] = ["kr"],
        ["ISK"] = ["kr"],
        ["PLN"] = ["zł"],
        ["CZK"] = ["Kč"],
        ["HUF"] = ["Ft"],
        ["INR"] = ["₹"],
        ["KRW"] = ["₩"],
        ["TRY"] = ["₺"],
        ["ILS"] = ["₪"],
        ["UAH"] = ["₴"],
        ["PHP"] = ["₱"],
        ["VND"] = ["₫"],
        ["NGN"] = ["₦"],
        ["ZAR"] = ["R"],
    };

    /// <summary>Removes one sign or code from the beginning or the end of a cell.</summary>
    /// <param name="cell">The cell, without white space around it; afterwards without the mark.</param>
    /// <param name="own">The currency of the line, else that of the draft; null if neither is known.</param>
    /// <param name="code">The code that was written; null with a sign or without a mark.</param>
    /// <returns>Why the mark cannot be read, or null.</returns>
    public static LineFault? Take(ref ReadOnlySpan<char> cell, string? own, out string? code)
    {
        var (from, to) = (0, cell.Length);
        while (from < to && IsMark(cell[from]))
            from++;
        while (to > from && IsMark(cell[to - 1]))
            to--;
        code = null;
        if (from == 0 && to == cell.Length)
            return null;
        if (from > 0 && to < cell.Length)
            return LineFault.BadAmount;
        var mark = (from > 0 ? cell[..from] : cell[to..]).ToString();
        cell = cell[from..to].Trim();
        if (mark.Length == 3 && Currency.Find(mark.ToUpperInvariant()) is { } written)
        {
            code = written.Code;
            return null;
        }
        if (own is not null && SignsOf(own).Contains(mark, StringComparer.OrdinalIgnoreCase))
            return null;
        return own is null && s_signs.Values.Any(signs => signs.Contains(mark, StringComparer.OrdinalIgnoreCase))
            ? LineFault.SignWithoutCurrency
            : LineFault.BadAmount;
    }

    private static string[] SignsOf(string code) => s_signs.GetValueOrDefault(code) ?? [];

    private static bool IsMark(char character) =>
        char.IsLetter(character) || char.GetUnicodeCategory(character) == UnicodeCategory.CurrencySymbol;
}
