using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>The least orders of all designs listed on a channel, as an answer.</summary>
internal static class LeastOrderAnswers
{
    /// <summary>The least orders under an offer. Refused as <see cref="LeastOrders.Of(Channel, Offer)"/> refuses.</summary>
    public static Outcome<LeastOrderAnswer> Of(Catalogue catalogue, Stored<Channel> channel, Offer offer)
    {
        var orders = LeastOrders.Of(channel.Document, offer);
        if (orders.Found is null)
            return orders.Faults.ToList();
        var found = catalogue.Designs
            .Select(design => (Design: design, Listed: catalogue.ListedPrices(design.Key).GetValueOrDefault(channel.Key)))
            .Where(one => one.Listed is not null).Select(one => Of(catalogue, orders.Value, channel, one.Design, one.Listed!)).ToList();
        return new LeastOrderAnswer
        {
            Threshold = LeastOrder.Threshold(found.Select(one => one.Least).OfType<LeastOrder>()),
            Never = [.. found.Where(one => one.Least is { Pieces: null }).Select(one => one.Answer.Sku)],
            Designs = [.. found.Select(one => one.Answer)],
        };
    }

    private static (LeastOrder? Least, LeastOrderOfDesignAnswer Answer) Of(Catalogue catalogue, LeastOrders orders, Stored<Channel> channel,
        Stored<Design> design, Stored<ListedPrice> listed)
    {
        var money = Currency.Of(channel.Document.Currency);
        var (least, reason) = LeastOf(catalogue, orders, channel, design, listed);
        return (least, new LeastOrderOfDesignAnswer
        {
            Sku = design.Key,
            ListedPrice = listed.Sound is { } sound ? Rounding.WithDecimals(sound.Price, money.Decimals) : null,
            Pieces = least?.Pieces,
            Total = least?.Total is { } total ? Rounding.WithDecimals(total, money.Decimals) : null,
            Reason = reason,
            Basis = design.Basis,
        });
    }

    /// <summary>The least order, or why it cannot be said: a damaged document is the reason for the designs that rest on it, and no others.</summary>
    private static (LeastOrder? Least, string? Reason) LeastOf(Catalogue catalogue, LeastOrders orders, Stored<Channel> channel,
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
            var least = orders.Of(floor.Value.Floor.UnitCost, listed.Document.Price);
            return least.Found is { } found ? (found, null) : (null, least.Faults[0].Code);
        }
        catch (DamagedDocumentException)
        {
            return (null, ReasonCodes.DamagedDocument);
        }
    }
}
