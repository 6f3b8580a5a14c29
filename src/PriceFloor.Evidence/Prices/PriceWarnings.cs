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

    /// <summary>Of slow stock: when a piece is unlikely to be sold, and how buyers answer in general.</summary>
    public static IReadOnlyList<Assumption> AssumedOfStock { get; } =
    [
        new("/soldSoon", SlowStock.LeastChance),
        new("/sensitivity", (decimal)Sensitivity.PriorShape / Sensitivity.PriorRate),
    ];

    /// <summary>Of what the market takes.</summary>
    public static IEnumerable<Warning> Of(MarketTakes? takes) => takes is { IsEnough: false }
        ? [new(EvidenceWarningCodes.TooFew, "Fewer than 8 orders were seen, so nothing should be planned with it.", "/maximum")] : [];

    /// <summary>Of the ways out of slow stock.</summary>
    /// <param name="stock">The pieces.</param>
    /// <param name="offer">The design where it is for sale; null: nowhere.</param>
    /// <param name="ways">The ways out.</param>
    /// <param name="pointer">Where they are.</param>
    public static IEnumerable<Warning> Of(StandingStock stock, PriceQuestion? offer, SlowStock ways, string pointer)
    {
        if (!stock.KnowsSales)
            yield return new(EvidenceWarningCodes.TooFew, "Too few pieces were sold to say how likely one sells, so hold counts only what was seen.",
                pointer + "/ways");
        if (stock.Design.Shelf.Differs)
            yield return new(EvidenceWarningCodes.StockDiffers, "A count found another number of pieces than the lines say.", pointer + "/onHand");
        if (offer?.Sensitivity.IsGeneral == true)
            yield return new(EvidenceWarningCodes.Guess,
                "Too few orders came after a change of price, so best is a guess from what is known of buyers in general.", pointer + "/ways");
        if (ways.Ways.Any(way => way.Reason == WayOutReason.UndercutsGallery))
            yield return new(EvidenceWarningCodes.UndercutsGallery, "The same design stands unmarked at a gallery, so no lower price is offered.",
                pointer + "/ways");
    }
}
