using System.Globalization;
using PriceFloor.Pricing;

namespace PriceFloor.Api.Http;

/// <summary>
/// Numbers as text, in bodies and in queries: digits with at most one point, nothing else. Exponents, more than 18 digits and more
/// decimals than a field carries are refused on the text, never rounded away; trailing zeros never count.
/// </summary>
public static class NumberText
{
    private const int MostDigits = 18;

    /// <summary>The number, or why it is none: a code and a sentence.</summary>
    public static (decimal Value, string? Code, string? Detail) Read(string text, string name, NumberFieldAttribute? field)
    {
        if (Shape(text) is not var (whole, fraction))
            return text.AsSpan().ContainsAny('e', 'E') && decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _)
                ? (0, "exponent", $"{name} is written with an exponent; write the digits out, such as 1200.50.")
                : (0, "not-a-number", $"{name} is not a plain number; write digits with at most one decimal point, such as 1200.50, without currency signs, spaces or thousands marks.");

        if (whole.Length + fraction.Length > MostDigits)
            return (0, "too-many-digits", $"{name} has more than 18 digits, which is finer than any price; shorten it.");
        if (field is not null && fraction.Length > field.Decimals)
            return (0, "too-many-decimals", $"{name} carries at most {Plain(field.Decimals)} decimals; it has {Plain(fraction.Length)}. Round it as you mean it.");

        var value = Rounding.Trim(decimal.Parse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture));
        return field is null || InRange(value, field)
            ? (value, null, null)
            : (value, "out-of-range", $"{name} must be {(field.Above ? "above" : "at least")} {field.Least} and at most {field.Most}; it is {Plain(value)}.");
    }

    /// <summary>The fault of a price with more decimals than its currency has, or null.</summary>
    public static string? TooFine(decimal price, string name, Currency currency) => Rounding.DecimalsOf(price) > currency.Decimals
        ? $"{name} has more decimals than {currency.Code} has: at most {Plain(currency.Decimals)}."
        : null;

    private static bool InRange(decimal value, NumberFieldAttribute field) =>
        value <= field.MostValue && (field.Above ? value > field.LeastValue : value >= field.LeastValue);

    /// <summary>The significant digits before and after the point, or null where the text is no plain number.</summary>
    private static (string Whole, string Fraction)? Shape(string text)
    {
        var digits = text.StartsWith('-') ? text[1..] : text;
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var whole = point < 0 ? digits : digits[..point];
        var fraction = point < 0 ? "" : digits[(point + 1)..];
        var isNumber = digits.Length <= 200 && whole.Length > 0 && (point < 0 || fraction.Length > 0)
            && whole.All(char.IsAsciiDigit) && fraction.All(char.IsAsciiDigit);
        return isNumber ? (whole.TrimStart('0'), fraction.TrimEnd('0')) : null;
    }

    private static string Plain(decimal value) => Rounding.Trim(value).ToString(CultureInfo.InvariantCulture);
}
