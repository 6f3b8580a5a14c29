using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>The least orders of all designs listed on a channel, as an answer.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Orders">The channel under the offer.</param>
/// <param name="Designs">The designs of which it can be said.</param>
public sealed record LeastOrderAnswers(LeastOrderAnswer Answer, LeastOrders Orders, IReadOnlyList<LeastOrderOfDesign> Designs)
{
    /// <summary>The least orders under an offer. Refused as <see cref="LeastOrders.Of(Channel, Offer)"/> refuses.</summary>
    public static Outcome<LeastOrderAnswers> Of(Catalogue catalogue, Stored<Channel> channel, Offer offer)
    {
        var orders = LeastOrders.Of(channel.Document, offer);
        if (orders.Found is null)
            return orders.Faults.ToList();
        var found = catalogue.Designs
            .Select(design => (Design: design, Listed: catalogue.ListedPrices(design.Key).GetValueOrDefault(channel.Key)))
            .Where(one => one.Listed is not null).Select(one => Of(catalogue, orders.Value, channel, one.Design, one.Listed!)).ToList();
        var designs = found.Select(one => one.Least).OfType<LeastOrderOfDesign>().ToList();
        return new LeastOrderAnswers(new LeastOrderAnswer
        {
            Threshold = LeastOrder.Threshold(designs.Select(one => one.Least)),
            Never = [.. designs.Where(one => one.Least.Pieces is null).Select(one => one.Key)],
            Designs = [.. found.Select(one => one.Answer)],
        }, orders.Value, designs);
    }

    private static (LeastOrderOfDesign? Least, LeastOrderOfDesignAnswer Answer) Of(Catalogue catalogue, LeastOrders orders, Stored<Channel> channel,
        Stored<Design> design, Stored<ListedPrice> listed)
    {
        var money = Currency.Of(channel.Document.Currency);
        var (least, reason) = LeastOf(catalogue, orders, channel, design, listed);
        return (least, new LeastOrderOfDesignAnswer
        {
            Sku = design.Key,
            ListedPrice = listed.Sound is { } sound ? Rounding.WithDecimals(sound.Price, money.Decimals) : null,
            Pieces = least?.Least.Pieces,
            Total = least?.Least.Total is { } total ? Rounding.WithDecimals(total, money.Decimals) : null,
            Reason = reason,
            Basis = design.Basis,
        });
    }

    /// <summary>The least order, or why it cannot be said: a damaged document is the reason for the designs that rest on it, and no others.</summary>
    private static (LeastOrderOfDesign? Least, string? Reason) LeastOf(Catalogue catalogue, LeastOrders orders, Stored<Channel> channel,
        Stored<Design> design, Stored<ListedPrice> listed)
    {
        try
        {
            if (catalogue.Profile(design.Document.Profile) is not { } profile)
                return (null, ReasonCodes.NotStored);
            if (profile.Document.Currency != channel.Document.Currency)
                return (null, FaultCodes.CurrencyMismatch);
            var floor = catalogue.Floor(profile, design);
            if (floor.Found is null)
                return (null, floor.Faults[0].Code);
            var (piece, price) = (floor.Value.Floor.UnitCost, listed.Document.Price);
            var least = orders.Of(piece, price);
            return least.Found is { } found ? (new LeastOrderOfDesign(design.Key, piece, price, found), null) : (null, least.Faults[0].Code);
        }
        catch (DamagedDocumentException)
        {
            return (null, ReasonCodes.DamagedDocument);
        }
    }
}
