using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks;

/// <summary>A design on a channel at a price, or at its listed price if none is given.</summary>
public static class OnSale
{
    /// <summary>The same for a design that the path names: if it does not exist, neither does the address.</summary>
    public static Outcome<CheckedPrice> OfPath(Catalogue catalogue, PathKey path, string channel, decimal? price) =>
        catalogue.Design(path.Text) is null
            ? RequestFault.NotFound($"There is no design \"{path.Text}\" (or there was none at that time).")
            : Of(catalogue, path.Text, channel, price, Place.Query);

    public static Outcome<CheckedPrice> Of(Catalogue catalogue, string sku, string channel, decimal? price, Place place,
        Stored<CostProfile>? profile = null, bool anyDecimals = false)
    {
        var design = place.IsQuery ? catalogue.Design(sku) : catalogue.DesignNamed(sku);
        if (price is null && catalogue.Channel(channel) is not null && design is not null)
        {
            price = catalogue.ListedUnder(sku, design, channel)?.Document.Price;
            if (price is null)
                return RequestFault.Invalid(place.Error("price", FaultCodes.Required,
                    $"No price is listed for \"{sku}\" on \"{channel}\"; give one, or list it first."));
        }

        return CheckedPrice.Of(catalogue, new PriceCheckRequest { Sku = sku, Channel = channel, Price = price ?? 0 }, place, profile,
            anyDecimals: anyDecimals);
    }
}
