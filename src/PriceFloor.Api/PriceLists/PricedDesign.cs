using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceLists;

/// <summary>A design's floor and target price on one channel, and the price listed there for it or for one of its other names; or why there is no
/// price.</summary>
/// <param name="FloorPrice">Null if there is a reason.</param>
/// <param name="TargetPrice">Null if there is a reason.</param>
/// <param name="ListedPrice">Null if nothing is listed.</param>
/// <param name="Verdict">Null if nothing is listed.</param>
/// <param name="NotAllowed">Whether the channel does not allow the listed price.</param>
/// <param name="Reason">Why there is no price.</param>
/// <param name="ShortBy">What the listed price is short of the floor on the channel, unrounded; null if nothing is
/// listed, and for callers who may not read.</param>
public sealed record PricedDesign(decimal? FloorPrice, decimal? TargetPrice, decimal? ListedPrice, Verdict? Verdict, bool NotAllowed,
    string? Reason, decimal? ShortBy = null)
{
    /// <summary>A damaged document is the reason for the prices that rest on it, and for no others.</summary>
    public static PricedDesign Of(Catalogue catalogue, Stored<Design> design, Stored<Channel> channel, bool mayRead = false, string? alias = null)
    {
        try
        {
            return Priced(catalogue, design, channel, mayRead, alias);
        }
        catch (DamagedDocumentException)
        {
            return new PricedDesign(null, null, null, null, false, ReasonCodes.DamagedDocument);
        }
    }

    private static PricedDesign Priced(Catalogue catalogue, Stored<Design> design, Stored<Channel> channel, bool mayRead, string? alias)
    {
        var listed = catalogue.ListedPrices(design.Key).GetValueOrDefault(ListedPriceKey.PlaceOf(channel.Key, alias))?.Document.Price;
        if (catalogue.Profile(design.Document.Profile) is not { } profile)
            return new PricedDesign(null, null, listed, null, false, "unknown-profile");
        var outcome = catalogue.Floor(profile, design);
        if (outcome.Found is not { } floor)
            return new PricedDesign(null, null, listed, null, false, outcome.Faults[0].Code);
        var prices = floor.On(channel);
        return prices.Found is { } found
            ? new PricedDesign(found.FloorPrice, found.TargetPrice, listed, listed is { } price ? found.VerdictOf(price) : null,
                listed is { } on && !found.Terms.Grid.Allows(on), null, mayRead && listed is { } asked ? found.ShortBy(asked) : null)
            : new PricedDesign(null, null, listed, null, false, prices.Faults[0].Code);
    }
}
