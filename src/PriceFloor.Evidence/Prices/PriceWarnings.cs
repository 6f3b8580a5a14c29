using System.Globalization;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Prices;

/// <summary>What may make figures of demand wrong, and what they rest on that nobody measured; pointers are into the answer.</summary>
public static class PriceWarnings
{
    /// <summary>How buyers answer in general, and how far one step goes: judgements, not findings.</summary>
    public static IReadOnlyList<Assumption> Assumed { get; } =
    [
        new("/sensitivity", (decimal)Sensitivity.PriorShape / Sensitivity.PriorRate),
        new("/next", NextPrice.Step),
    ];

    public static IEnumerable<Warning> Of(PriceQuestion question, StudioDemand studio, ShelfHistory shelf)
    {
        if (question.Sensitivity.IsGeneral)
            yield return new(EvidenceWarningCodes.Guess,
                "Too few orders came after a change of price, so best is a guess from what is known of buyers in general.", "/best");
        if (!studio.Seasons.IsKnown && question.Demand.Offer.Exposure != Exposure.Events)
            yield return new(EvidenceWarningCodes.SeasonUnknown, "Less than a year of orders was seen, so every month weighs the same.", "/expected");
        if (shelf is { Made: > 0, Unmatched: > 0 })
            yield return new(EvidenceWarningCodes.StockUnknown,
                string.Create(CultureInfo.InvariantCulture, $"{shelf.Unmatched} pieces were sold that no line says were made."), "/rate");
    }

    /// <summary>Of a mark-down that is not offered.</summary>
    /// <param name="ways">The ways out of slow stock.</param>
    /// <param name="pointer">Where they are.</param>
    public static IEnumerable<Warning> Of(SlowStock ways, string pointer) => ways.Ways.Any(way => way.UndercutsGallery)
        ? [new(EvidenceWarningCodes.UndercutsGallery, "The same design stands unmarked at a gallery, so no lower price is offered.", pointer)] : [];
}
