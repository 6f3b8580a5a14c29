using System.Globalization;

namespace PriceFloor.Api.Http;

/// <summary>Dates and times as text: RFC 3339, nothing looser.</summary>
public static class TimeText
{
    private static readonly string[] s_times =
        [.. Enumerable.Range(0, 8).Select(digits => "yyyy-MM-dd'T'HH:mm:ss" + (digits == 0 ? "" : "." + new string('f', digits)) + "K")];

    /// <summary>A studio year later than the last of these has no next first day.</summary>
    private const int FirstYear = 1000, LastYear = 9990;

    /// <summary>A date that exists, of the years 1000 to 9990, as 2027-02-28; null for anything else.</summary>
    public static DateOnly? ReadDate(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
        && date.Year is >= FirstYear and <= LastYear ? date : null;

    /// <summary>A time with its offset, of the years 1000 to 9990, as 2027-03-01T00:00:00Z; null for anything else.</summary>
    public static DateTimeOffset? ReadTime(string text) =>
        text.Length > 19 && (text.EndsWith('Z') || text[^6] is '+' or '-')
        && DateTimeOffset.TryParseExact(text, s_times, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
        && time.UtcDateTime.Year is >= FirstYear and <= LastYear ? time : null;

    /// <summary>A time in UTC with its microseconds, so a time that is sent back as asOf is exactly the one that was written.</summary>
    public static string Write(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture);
}
