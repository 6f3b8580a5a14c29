using System.Globalization;

namespace PriceFloor.Statements.Files;

/// <summary>Values as OFX writes them.</summary>
internal static class OfxValue
{
    private const int MostDigits = 18;

    /// <summary>
    /// YYYYMMDD, then perhaps a time and an offset from Greenwich. The day is taken as written: it is the day in the bank's own zone, and converting
    /// it would move a booking of New Year's Eve into another tax year.
    /// </summary>
    public static DateOnly? Day(string value)
    {
        var text = value.AsSpan().Trim();
        if (text.Length < 8 || text[..8].ContainsAnyExceptInRange('0', '9') || (text.Length > 8 && !char.IsAsciiDigit(text[8]) && text[8] != '['))
            return null;
        return SheetDate.Day(text[..4], text[4..6], text[6..8], out var day) is null ? day : null;
    }

    /// <summary>
    /// A sign, digits, and one decimal point or comma, without thousands marks. A comma before exactly three digits is refused, since the bank more
    /// likely separates thousands against the rule.
    /// </summary>
    public static decimal? Amount(string value)
    {
        var text = value.AsSpan().Trim();
        var negative = text is ['-', ..];
        if (text is ['-' or '+', ..])
            text = text[1..];
        var mark = text.IndexOfAny('.', ',');
        if (text.IsEmpty || (mark >= 0 && text[mark] == ',' && text.Length - mark == 4))
            return null;
        Span<char> plain = stackalloc char[MostDigits + 1];
        if (text.Length > plain.Length)
            return null;
        text.Replace(plain, ',', '.');
        return decimal.TryParse(plain[..text.Length], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var amount)
            ? negative ? -amount : amount
            : null;
    }
}
