using System.Collections;
using System.Globalization;
using System.Reflection;
using PriceFloor.Api.Http;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Differences;

/// <summary>Values as people write them: money with its decimals, shares in per cent, yes and no.</summary>
internal sealed class ValueWords(string? currency)
{
    /// <summary>A longer text is only said to have changed.</summary>
    private const int LongestText = 80;

    private const string NotSet = "not set";

    /// <summary>The value of a property. Empty for a text too long to repeat.</summary>
    public string Of(PropertyInfo property, object? value) => value switch
    {
        null => NotSet,
        decimal number => Number(property.GetCustomAttribute<NumberFieldAttribute>(), number),
        bool yes => yes ? "yes" : "no",
        DateOnly day => DisplayText.Date(day),
        DateTimeOffset time => time.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
        Enum word => KebabWords.Spoken(word.ToString()),
        string text => text.Length > LongestText ? "" : $"\"{text}\"",
        IEnumerable list => string.Join(", ", list.Cast<object>().Select(one => Of(property, one))) is { Length: > 0 } all ? all : "none",
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    /// <summary>With the currency's decimals, or with more if it has more.</summary>
    public string Money(decimal amount) => currency is not null && Currency.Find(currency) is { } known && Rounding.HasAtMost(amount, known.Decimals)
        ? DisplayText.Money(amount, currency)
        : DisplayText.Number(amount);

    private string Number(NumberFieldAttribute? field, decimal number) => field switch
    {
        MoneyAttribute or PriceAttribute => Money(number),
        ShareAttribute => $"{DisplayText.Number(number * 100)} %",
        _ => DisplayText.Number(number),
    };
}
