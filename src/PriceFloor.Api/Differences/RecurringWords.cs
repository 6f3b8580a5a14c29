using PriceFloor.Api.Http;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Differences;

/// <summary>An amount that is paid again and again: "540.00 a month".</summary>
/// <param name="Amount">The amount each time.</param>
/// <param name="Often">How often.</param>
internal sealed record RecurringWords(string Amount, string Often)
{
    private static readonly string[] s_recurring = ["amount", "per", "times"], s_pay = ["amount", "per"];

    public string Text => $"{Amount} {Often}";

    /// <summary>Null if the record is no such amount.</summary>
    public static RecurringWords? Of(object record, ValueWords values) => record switch
    {
        IRecurring line => new RecurringWords(values.Money(line.Amount), OftenOf(line)),
        Pay pay => new RecurringWords(values.Money(pay.Amount), (pay.Per == PayPer.Hour ? "an " : "a ") + KebabWords.Of(pay.Per)),
        _ => null,
    };

    /// <summary>Whether these words say that member of the record.</summary>
    public static bool Says(object record, string member) =>
        record is IRecurring ? s_recurring.Contains(member) : record is Pay && s_pay.Contains(member);

    /// <summary>This as the earlier one: how often is said once if it stays.</summary>
    public string From(RecurringWords now) => now.Often == Often ? Amount : Text;

    private static string OftenOf(IRecurring line) => line.Per switch
    {
        Per.Time => $"{DisplayText.Number(line.Times ?? 0)} times a year",
        Per.FourWeeks => "every four weeks",
        _ => "a " + KebabWords.Of(line.Per),
    };
}
