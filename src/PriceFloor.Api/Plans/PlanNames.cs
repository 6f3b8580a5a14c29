using System.Collections.Immutable;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Plans;

/// <summary>The documents that a plan names.</summary>
public static class PlanNames
{
    /// <summary>
    /// The plan with the keys of its designs, which it may name by an alias, and its seasons in order of name. What is unknown is reported for all
    /// places at once.
    /// </summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="at">Where it is, such as <c>#/plan</c>.</param>
    public static Outcome<Plan> Resolved(Catalogue catalogue, Plan plan, string at = "#")
    {
        var faults = new List<Fault>();
        var lines = plan.Lines.Select((line, i) => line with { Sku = KeyOf(line.Sku, $"{at}/lines/{i}") }).ToList();
        var stock = plan.Opening.Stock.Select((item, i) => item with { Sku = KeyOf(item.Sku, $"{at}/opening/stock/{i}") }).ToList();
        foreach (var (i, line) in plan.Lines.Index())
            Known(line.Channel, $"{at}/lines/{i}");
        foreach (var (i, terms) in plan.Terms.Index())
            Known(terms.Channel, $"{at}/terms/{i}");
        var before = new HashSet<string>();
        foreach (var (i, item) in stock.Index().Where(item => !before.Add(item.Item.Sku)))
            faults.Add(RequestFault.Invalid(Place.In($"{at}/opening/stock/{i}").Error("sku", FaultCodes.Duplicate,
                $"\"{item.Sku}\" stands in the list already, perhaps under another name; leave one out.")));
        return faults.Count > 0 ? faults : plan with
        {
            Lines = lines,
            Opening = plan.Opening with { Stock = stock },
            Seasons = plan.Seasons.ToImmutableSortedDictionary(StringComparer.Ordinal),
        };

        string KeyOf(string sku, FormattableString place)
        {
            if (catalogue.DesignNamed(sku)?.Key is { } key)
                return key;
            faults.Add(RequestFault.Unknown(Place.In(FormattableString.Invariant(place)).Error("sku", InputCodes.UnknownDesign,
                $"There is no design \"{sku}\"; store it first, or correct the name (case counts).")));
            return sku;
        }

        void Known(string channel, FormattableString place)
        {
            if (catalogue.Channel(channel) is null)
                faults.Add(RequestFault.Unknown(Place.In(FormattableString.Invariant(place)).Error("channel", InputCodes.UnknownChannel,
                    $"There is no channel \"{channel}\"; store it first, or correct the key (case counts).")));
        }
    }

    /// <summary>What a stored plan refers to: none of these can be deleted while it does.</summary>
    public static IReadOnlyList<Storage.DocumentName> References(Plan plan) =>
    [
        new Storage.DocumentName(Kinds.Profile, plan.Profile),
        .. plan.Lines.Select(line => line.Sku).Concat(plan.Opening.Stock.Select(item => item.Sku)).Distinct()
            .Select(sku => new Storage.DocumentName(Kinds.Design, sku)),
        .. plan.Lines.Select(line => line.Channel).Concat(plan.Terms.Select(terms => terms.Channel)).Distinct()
            .Select(channel => new Storage.DocumentName(Kinds.Channel, channel)),
    ];
}
