using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Demands;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.WholeShelf;

namespace PriceFloor.Api.StockLists;

/// <summary>The slow pieces of profiles, from the stored lines of their designs.</summary>
internal static class LoggedStock
{
    public static async ValueTask<StockAnswer> OfAsync(LoggedQuestion question, LoggedShelves shelves, IReadOnlyList<Stored<CostProfile>> profiles,
        StockQuery asked)
    {
        var found = new List<(ShelfLine Line, StudioShelf Shelf)>();
        foreach (var profile in profiles)
        {
            var shelf = await shelves.OfAsync(question, profile, await shelves.Good(question, profile));
            found.AddRange(shelf.Lines.Where(line => asked.Sku is null || line.Sku == asked.Sku).Select(line => (line, shelf)));
        }

        found.Sort((one, other) => string.CompareOrdinal(one.Line.Sku, other.Line.Sku));
        var (items, warnings) = (new List<StockItemAnswer>(), new List<Warning>());
        foreach (var (line, shelf) in found)
            if (StandingStock.Of(line.Design, asked.OlderThan) is { Slow.Count: > 0 } stock)
            {
                var (item, told) = ItemOf(question.Catalogue, stock, shelf, asked, FormattableString.Invariant($"/items/{items.Count}"));
                items.Add(item);
                warnings.AddRange(told);
            }

        var newest = question.SeesAll ? await question.Log.NewestDay() : null;
        return new StockAnswer
        {
            OlderThan = asked.OlderThan,
            To = question.Log.Choices.To,
            Items = items,
            Unknown = [.. found.Where(one => one.Line.Design.Shelf is { IsKnown: false }).Select(one => one.Line.Sku)],
            Warnings = WarningAnswer.Of(warnings.Concat(EvidenceWarnings.OfAge(newest, question.Log.Choices.To))),
            Assumed = AssumptionAnswer.Of(PriceWarnings.AssumedOfStock),
            Basis = new EvidenceBasisAnswer
            {
                Profiles = [.. profiles.Select(profile => profile.Basis)],
                Designs = [.. items.Select(item => question.Catalogue.Design(item.Sku)!.Basis)],
                Channels = [.. items.Select(item => item.Channel).OfType<string>().Distinct().Order(StringComparer.Ordinal)
                    .Select(key => question.Catalogue.Channel(key)!.Basis)],
                Log = question.Log.Basis,
            },
        };
    }

    private static (StockItemAnswer Item, IEnumerable<Warning> Warnings) ItemOf(Catalogue catalogue, StandingStock stock, StudioShelf shelf,
        StockQuery asked, string pointer)
    {
        var offer = OfferOf(catalogue, stock, shelf);
        var time = offer?.Demand.TimeOf(asked.Days) ?? 0;
        var slow = new SlowPieces(stock.Slow, time, offer?.Demand.Offer.Price,
            asked.MaterialsKept is { } kept ? stock.Rework(kept, asked.ReworkMinutes) : null, IsAtGallery(catalogue, stock, offer));
        var ways = stock.WaysOut(offer, slow);
        return (StockItemAnswer.Of(stock, offer, slow, ways, asked), PriceWarnings.Of(stock, offer, ways, pointer));
    }

    /// <summary>The design on the channel of most orders that has a floor price; null where there is none.</summary>
    private static PriceQuestion? OfferOf(Catalogue catalogue, StandingStock stock, StudioShelf shelf)
    {
        var wholesale = catalogue.Floor(catalogue.Profile(stock.Design.Known.Stored.Design.Profile!)!, catalogue.Design(stock.Design.Known.Sku)!)
            .Found?.Floor.HighestWholesale;
        return shelf.Demand.Of(stock.Design.Known.Sku)
            .Select(demand => LoggedDemand.OfPrices(stock.Piece, wholesale, demand.Offer.Channel).Found is { } prices
                ? new PriceQuestion(demand, stock.Piece, prices, shelf.Demand.Sensitivity) : null)
            .FirstOrDefault(offer => offer is not null);
    }

    /// <summary>Whether pieces stand at a gallery, which keeps a share of the price, and are not sold off there too.</summary>
    private static bool IsAtGallery(Catalogue catalogue, StandingStock stock, PriceQuestion? offer)
    {
        var listed = catalogue.ListedPrices(stock.Design.Known.Sku);
        return stock.Design.Shelf.Places.Any(place => place.Channel is { } key && key != offer?.Demand.Offer.Key
            && catalogue.Channel(key)?.Sound is { ShopShare: > 0 }
            && !ClearingPrices.MayClear(listed.GetValueOrDefault(key)?.Sound, catalogue.Today));
    }
}
