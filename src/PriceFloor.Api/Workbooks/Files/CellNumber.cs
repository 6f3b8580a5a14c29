using System.Globalization;

namespace PriceFloor.Api.Workbooks.Files;

/// <summary>
/// Numbers in cells. A spreadsheet calculates in binary and shows at most 15 digits: 42.56 may be in the file as 42.560000000000002. So 15 digits
/// count, and a number with more is written as a text.
/// </summary>
internal static class CellNumber
{
    private const int Digits = 15;

    /// <summary>The number as plain text, as the spreadsheet shows it; the text itself if it is no number that a decimal can be.</summary>
    public static string Plain(string text)
    {
        if (!decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            return text;
        return DigitsOf(number) > Digits && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var binary)
            ? Rounding.Trim(Shown(binary)).ToString(CultureInfo.InvariantCulture)
            : Rounding.Trim(number).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Whether a cell can have the number and give it back.</summary>
    public static bool Fits(decimal number) => DigitsOf(number) <= Digits;

    /// <summary>The day of a number, or the text itself if it is none: days since the end of 1899, or since 1904.</summary>
    public static string Day(string text, bool from1904)
    {
        if (!decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            || number < 1 || number > (from1904 ? 2_957_003 : 2_958_465))
            return text;
        var days = (int)decimal.Truncate(number);
        var first = from1904 ? new DateTime(1904, 1, 1) : new DateTime(1899, 12, days < 60 ? 31 : 30); // 1900 has a 29 February there
        return number == days
            ? first.AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : first.AddDays(days).ToString("yyyy-MM-dd'T'", CultureInfo.InvariantCulture) + "with a time of day";
    }

    private static decimal Shown(double number) =>
        decimal.TryParse(number.ToString("G15", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture, out var shown)
            ? shown : 0;

    private static int DigitsOf(decimal number)
    {
        var digits = Rounding.Trim(decimal.Abs(number)).ToString(CultureInfo.InvariantCulture)
            .Replace(".", "", StringComparison.Ordinal).TrimStart('0');
        return digits.Length;
    }
}
