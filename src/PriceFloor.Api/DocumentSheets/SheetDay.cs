using System.Globalization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>
/// A day in a cell. A spreadsheet that opens 2027-07-01 may save it as 7/1/2027, or as 1-Jul-27: what can be read in one way only is read.
/// </summary>
internal static class SheetDay
{
    /// <summary>The year first, or a month in English words; never two numbers of which either may be the month.</summary>
    private static readonly string[] s_certain =
    [
        "yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "d-MMM-yy", "d-MMM-yyyy", "d MMM yyyy", "d MMMM yyyy", "MMMM d, yyyy", "MMM d, yyyy",
    ];

    /// <summary>The day as 2027-07-01 or, if it is none, the text and what to write.</summary>
    public static (string Text, (Code Code, string Detail)? Fault) Read(string text, string name)
    {
        if (TimeText.ReadDate(text) is not null)
            return (text, null);
        var isDay = DateOnly.TryParseExact(text.Trim(), s_certain, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day);
        var written = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return isDay && TimeText.ReadDate(written) is not null ? (written, null)
            : (text, (InputCodes.NotADate, $"{name} is \"{(text.Length <= 40 ? text : text[..40] + "...")}\"; a day is written 2027-02-28. If your "
                + "spreadsheet shows days in another way, give the column the format YYYY-MM-DD before you save it, or send the workbook."));
    }
}
