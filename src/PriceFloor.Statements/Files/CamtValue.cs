using System.Globalization;

namespace PriceFloor.Statements.Files;

/// <summary>Values as XML Schema writes them.</summary>
internal static class CamtValue
{
    private const int MostDigits = 18;

    /// <summary>The day of a date or a time, as written: never converted to another time zone.</summary>
    public static DateOnly? Day(string? value)
    {
        var text = value.AsSpan().Trim();
        if (text.Length < 10 || text[4] != '-' || text[7] != '-' || (text.Length > 10 && text[10] is not ('T' or 'Z' or '+' or '-')))
            return null;
        return SheetDate.Day(text[..4], text[5..7], text[8..10], out var day) is null ? day : null;
    }

    /// <summary>
    /// Amounts have no sign: a credit or debit indicator is beside them. At most 18 digits (ActiveOrHistoricCurrencyAndAmount).
    /// </summary>
    public static decimal? Amount(string? value)
    {
        var text = value.AsSpan().Trim();
        return text.Length is > 0 and <= MostDigits + 1
            && decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var amount) ? amount : null;
    }
}
