using System.Globalization;
using System.Text.RegularExpressions;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Pictures;

/// <summary>Figures and words as people read them on a picture or on paper.</summary>
public static partial class DisplayText
{
    /// <summary>With the currency's decimals and commas between thousands: 1,234.50.</summary>
    public static string Money(decimal amount, string currency) => Number(amount, Currency.Of(currency).Decimals);

    /// <summary>Without trailing zeros.</summary>
    public static string Number(decimal value) => Number(value, Rounding.DecimalsOf(value));

    public static string Date(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Date(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

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

    /// <summary>A kind of cost as a maker says it: "car and travel", "room at home".</summary>
    public static string Kind(CostKind kind) => kind switch
    {
        CostKind.HomeWorkspace => "room at home",
        CostKind.ContractLabour => "hired work",
        CostKind.Depreciation => "wear of machines",
        CostKind.BadDebtsAndRefunds => "money never paid or given back",
        _ => KebabWords.Spoken(kind.ToString()),
    };

    /// <summary>A name with its key, or the key if there is no name.</summary>
    public static string Named(string? name, string key) => name is null ? key : $"{name} ({key})";

    /// <summary>A message with its fields as words: nobody types on paper, so "benchShare" is "bench share".</summary>
    public static string Message(string message) => FieldName().Replace(message, field => KebabWords.Spoken(field.Value));

    /// <summary>A document by its key: its revision, "main@2", means nothing to people.</summary>
    public static string Document(string basis) => RevisionNumber().Replace(basis, "");

    [GeneratedRegex(@"\b[a-z]+([A-Z][a-z]+)+\b", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex FieldName();

    [GeneratedRegex("@[0-9]+(?=$|: deleted$)", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex RevisionNumber();

    private static string Number(decimal value, int decimals) =>
        value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
