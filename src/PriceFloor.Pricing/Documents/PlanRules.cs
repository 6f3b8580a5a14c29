using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Documents;

/// <summary>
/// The rules between the fields of a plan: seasons of twelve months, one item for each channel, nothing carried into a steady year.
/// </summary>
public static class PlanRules
{
    /// <summary>Every rule that the document breaks. Missing required fields are reported elsewhere.</summary>
    public static IEnumerable<Fault> Faults(Plan plan) =>
    [
        .. SeasonFaults(plan.Seasons, plan.Work, Items(plan.Lines).Select(line => line?.Season)),
        .. Twice([.. Items(plan.Terms).Select(item => item?.Channel)], i => $"/terms/{i}/channel"),
        .. Items(plan.PaidIn).SelectMany((item, i) => MonthsTwice(item?.Months, $"/paidIn/{i}/months")),
        .. MonthsTwice(plan.SalesTaxPaid, "/salesTaxPaid"),
        .. Items(plan.TaxPaid).Index().Where(item => item.Item is not null && item.Item.Amount is null == item.Item.Share is null).Select(item =>
            new Fault($"/taxPaid/{item.Index}", FaultCodes.ExactlyOne, "Give either amount, or share of this year's tax.")),
        .. OpeningFaults(plan),
    ];

    /// <summary>Whether these are twelve weights of at least 0, one of them above 0.</summary>
    public static bool IsSeason(IReadOnlyList<decimal>? weights) =>
        weights is { Count: 12 } && weights.All(weight => weight >= 0) && weights.Any(weight => weight > 0);

    /// <summary>Seasons that are none, and lines that name a season which is not there.</summary>
    /// <param name="seasons">Seasons by name.</param>
    /// <param name="work">How the hours are spread over the months; null for evenly.</param>
    /// <param name="ofLines">The season that each line names; null for none.</param>
    public static IEnumerable<Fault> SeasonFaults(IReadOnlyDictionary<string, IReadOnlyList<decimal>>? seasons, IReadOnlyList<decimal>? work,
        IEnumerable<string?> ofLines)
    {
        foreach (var (name, _) in (seasons ?? Empty).Where(season => !IsSeason(season.Value)))
            yield return NotASeason($"/seasons/{Escaped(name)}");
        if (work is not null && !IsSeason(work))
            yield return NotASeason("/work");
        foreach (var (index, season) in ofLines.Index())
            if (season is not null && seasons?.ContainsKey(season) != true)
                yield return new($"/lines/{index}/season", FaultCodes.UnknownSeason,
                    $"The plan has no season \"{season}\"; add it to seasons, or correct the name (case counts).");
    }

    private static string Escaped(string name) => name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    private static IReadOnlyDictionary<string, IReadOnlyList<decimal>> Empty { get; } = new Dictionary<string, IReadOnlyList<decimal>>();

    private static IReadOnlyList<T> Items<T>(IReadOnlyList<T>? items) => items ?? [];

    private static Fault NotASeason(string at) => new(at, FaultCodes.NotASeason,
        "Twelve numbers of at least 0 are needed, one for each month of the year and one of them above 0, such as [4,5,6,6,8,6,5,5,7,10,19,19].");

    private static IEnumerable<Fault> OpeningFaults(Plan plan)
    {
        if (plan.Opening is not { } opening)
            yield break;
        foreach (var fault in Twice([.. Items(opening.Stock).Select(item => item?.Sku)], i => $"/opening/stock/{i}/sku"))
            yield return fault;
        if (!plan.Steady)
            yield break;
        if (Items(opening.OwedToUs).Count > 0)
            yield return Contradictory("/opening/owedToUs");
        if (Items(opening.Stock).Count > 0)
            yield return Contradictory("/opening/stock");
    }

    private static Fault Contradictory(string at) => new(at, FaultCodes.Contradictory,
        "A steady year begins as it ends, so it says itself what is owed and what lies ready; leave this out, or leave steady out.");

    private static IEnumerable<Fault> Twice(IReadOnlyList<string?> names, Func<int, FormattableString> at)
    {
        var before = new HashSet<string>();
        foreach (var (index, name) in names.Index())
            if (name is not null && !before.Add(name))
                yield return new(FormattableString.Invariant(at(index)), FaultCodes.Duplicate,
                    $"\"{name}\" stands in the list already; leave one out.");
    }

    private static IEnumerable<Fault> MonthsTwice(IReadOnlyList<decimal>? months, string at)
    {
        var before = new HashSet<decimal>();
        foreach (var (index, month) in Items(months).Index())
            if (!before.Add(month))
                yield return new(FormattableString.Invariant($"{at}/{index}"), FaultCodes.Duplicate,
                    FormattableString.Invariant($"Month {month} stands in the list already; leave one out."));
    }
}
