using System.Globalization;

namespace PriceFloor.Api.Pictures;

/// <summary>Figures and words as people read them on a picture or on paper.</summary>
public static class InWords
{
    /// <summary>With the currency's decimals and commas between thousands: 1,234.50.</summary>
    public static string Money(decimal amount, string currency) => Number(amount, Currency.Of(currency).Decimals);

    /// <summary>Without decimals that are nothing.</summary>
    public static string Number(decimal value) => Number(value, Rounding.DecimalsOf(value));

    public static string Date(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Verdict(Verdict? verdict) => verdict switch
    {
        Pricing.Selling.Verdict.BelowFloor => "below the floor",
        Pricing.Selling.Verdict.BelowTarget => "below the target",
        Pricing.Selling.Verdict.MeetsTarget => "meets the target",
        _ => "not listed",
    };

    /// <summary>Why there is no price.</summary>
    public static string Reason(string reason) => reason switch
    {
        "currency-mismatch" => "no price: other currency",
        "not-stored" => "not stored",
        _ => "no price: " + reason.Replace('-', ' '),
    };

    /// <summary>A name with its key, or the key where there is no name.</summary>
    public static string Named(string? name, string key) => name is null ? key : $"{name} ({key})";

    private static string Number(decimal value, int decimals) => value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
