using System.Globalization;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// Numbers as text, in bodies and in queries: digits with at most one point, nothing else. Exponents, more than 18 digits and more decimals than a
/// field has are refused, never rounded away; trailing zeros do not count.
/// </summary>
public static class NumberText
{
    private const int MostDigits = 18;

    private static readonly NumberFormatInfo s_decimalComma =
        NumberFormatInfo.ReadOnly(new NumberFormatInfo { NumberDecimalSeparator = ",", NumberGroupSeparator = "." });

    /// <summary>The number, or its fault: a code and a sentence.</summary>
    public static (decimal Value, Code? Code, string? Detail) Read(ReadOnlySpan<char> text, string name, NumberFieldAttribute? field) =>
        Read(text, name, field, '.');

    /// <summary>The same with a decimal mark that may be a comma.</summary>
    public static (decimal Value, Code? Code, string? Detail) Read(ReadOnlySpan<char> text, string name,
        NumberFieldAttribute? field, char decimalMark)
    {
        var format = FormatOf(decimalMark);
        if (DigitsOf(text, decimalMark) is not var (whole, fraction))
            return text.ContainsAny('e', 'E') && decimal.TryParse(text, NumberStyles.Float, format, out _)
                ? (0, InputCodes.Exponent, $"{name} is written with an exponent; write the digits out, such as 1200{decimalMark}50.")
                : (0, InputCodes.NotANumber, $"{name} is not a plain number; write digits with at most one decimal "
                    + $"{(decimalMark == ',' ? "comma" : "point")}, such as 1200{decimalMark}50, without currency signs, "
                    + $"spaces or thousands marks.{OfPercentage(text, field, decimalMark)}");

        if (whole + fraction > MostDigits)
            return (0, InputCodes.TooManyDigits, $"{name} has more than 18 digits, which is finer than any price; shorten it.");
        if (field is not null && fraction > field.Decimals)
            return (0, FaultCodes.TooManyDecimals,
                $"{name} has at most {Plain(field.Decimals)} decimals; it was sent with {Plain(fraction)}. Round it yourself.");

        var value = ValueOf(text, decimalMark, fraction);
        return field is null || InRange(value, field) ? (value, null, null) : (value, FaultCodes.OutOfRange, OutOfRange(value, name, field, format));
    }

    /// <summary>What to say of a number outside the bounds of its field; null if it lies within.</summary>
    /// <param name="value">The number.</param>
    /// <param name="field">Its field; null if it has no bounds.</param>
    /// <param name="name">Its name, asked for only if there is something to say.</param>
    public static string? OutOfRange(decimal value, NumberFieldAttribute? field, Func<string> name) =>
        field is null || InRange(value, field) ? null : OutOfRange(value, name(), field, CultureInfo.InvariantCulture);

    private static string OutOfRange(decimal value, string name, NumberFieldAttribute field, IFormatProvider format) =>
        $"{name} must be {(field.Above ? "above" : "at least")} {field.Minimum} and at most {field.Maximum}; "
        + $"it is {value.ToString(format)}.{AsShare(value, field, format)}";

    /// <summary>"45 %" where a share is wanted: the number to write instead.</summary>
    /// <param name="text">The text.</param>
    /// <param name="field">The field that it is for.</param>
    /// <param name="decimalMark">A point or a comma.</param>
    public static string OfPercentage(ReadOnlySpan<char> text, NumberFieldAttribute? field, char decimalMark) =>
        field is ShareAttribute && text.EndsWith('%')
            && decimal.TryParse(text[..^1].Trim(), NumberStyles.AllowDecimalPoint, FormatOf(decimalMark), out var percent) && percent <= 100
            ? AsShare(percent, field, FormatOf(decimalMark))
            : "";

    private static IFormatProvider FormatOf(char decimalMark) => decimalMark == ',' ? s_decimalComma : CultureInfo.InvariantCulture;

    /// <summary>A share that was given as a percentage: 2.9 of 100 is 0.029. Nothing where that share would be refused too.</summary>
    private static string AsShare(decimal percent, NumberFieldAttribute? field, IFormatProvider format) =>
        field is ShareAttribute && percent is >= 0 and <= 100 && InRange(percent / 100, field)
            ? $" Shares are fractions of 1: {percent.ToString(format)} % is written {Rounding.Trim(percent / 100).ToString(format)}."
            : "";

    private static bool InRange(decimal value, NumberFieldAttribute field) =>
        value <= field.MaximumValue && (field.Above ? value > field.MinimumValue : value >= field.MinimumValue);

    /// <summary>The number of significant digits before and after the decimal mark, or null if the text is not a plain number.</summary>
    private static (int Whole, int Fraction)? DigitsOf(ReadOnlySpan<char> text, char decimalMark)
    {
        var digits = text.StartsWith('-') ? text[1..] : text;
        var mark = digits.IndexOf(decimalMark);
        var whole = mark < 0 ? digits : digits[..mark];
        var fraction = mark < 0 ? default : digits[(mark + 1)..];
        var isNumber = digits.Length <= 200 && whole.Length > 0 && (mark < 0 || fraction.Length > 0)
            && AreDigits(whole) && AreDigits(fraction);
        return isNumber ? (whole.TrimStart('0').Length, fraction.TrimEnd('0').Length) : null;
    }

    /// <summary>
    /// The digits as one whole number, which has at most 18 of them, and how many of them are decimals; trailing zeros are left out.
    /// </summary>
    private static decimal ValueOf(ReadOnlySpan<char> text, char decimalMark, int decimals)
    {
        var (digits, isFraction, left) = (0L, false, decimals);
        foreach (var one in text)
            if (one == decimalMark)
                isFraction = true;
            else if (char.IsAsciiDigit(one) && !(isFraction && left-- <= 0))
                digits = (digits * 10) + (one - '0');
        return digits == 0 ? 0 : new decimal((int)digits, (int)(digits >> 32), 0, isNegative: text[0] == '-', (byte)decimals);
    }

    private static bool AreDigits(ReadOnlySpan<char> text)
    {
        foreach (var one in text)
            if (!char.IsAsciiDigit(one))
                return false;
        return true;
    }

    private static string Plain(decimal value) => Rounding.Trim(value).ToString(CultureInfo.InvariantCulture);
}
