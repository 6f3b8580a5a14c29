using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.LineSheets;

/// <summary>What the maker should know before a line sheet is given to a buyer. It reveals floors, so it is for keys that may read.</summary>
internal static class LineSheetWarnings
{
    /// <param name="catalogue">The documents.</param>
    /// <param name="channel">The channel of the line sheet.</param>
    /// <param name="items">Its lines.</param>
    public static IEnumerable<Warning> In(Catalogue catalogue, Stored<Channel> channel, IReadOnlyList<LineSheetItemAnswer> items)
    {
        foreach (var (index, item) in items.Index())
            if (catalogue.DesignNamed(item.Sku) is { Sound: not null } design)
                foreach (var warning in In(catalogue, channel, design, item, FormattableString.Invariant($"/items/{index}/price")))
                    yield return warning;
    }

    private static IEnumerable<Warning> In(Catalogue catalogue, Stored<Channel> channel, Stored<Design> design, LineSheetItemAnswer item, string at)
    {
        var currency = channel.Document.Currency;
        var priced = PricedDesign.Of(catalogue, design, channel, alias: item.Sku == design.Key ? null : item.Sku);
        if (priced is { Verdict: Verdict.BelowFloor, FloorPrice: { } floor })
            yield return new(WarningCodes.BelowFloor,
                $"\"{item.Sku}\" is listed at {DisplayText.Money(item.Price, currency)} here and its floor price is "
                + $"{DisplayText.Money(floor, currency)}: such a sale does not carry its part of the year.", at);
        if (channel.Document.Sells != Sells.Wholesale || catalogue.Profile(design.Document.Profile)?.Sound is not { } profile)
            yield break;
        var least = Sale.BeforeTaxOf(item.Price, channel.Document) * profile.PriceRule.RetailMultiple;
        foreach (var (key, price, beforeTax, isOfDesign) in AtRetail(catalogue, design, item.Sku, currency))
            if (Rounding.Settle(beforeTax) < Rounding.Settle(least))
                yield return new(WarningCodes.RetailUndercutsShops, $"\"{key}\" lists \"{item.Sku}\" at {DisplayText.Money(price, currency)}"
                    + $"{(isOfDesign ? $" (the price of \"{design.Key}\": the name has none of its own there)" : "")}, and "
                    + $"{DisplayText.Number(profile.PriceRule.RetailMultiple)} times what shops pay is "
                    + $"{DisplayText.Money(Currency.Of(currency).RoundUp(least), currency)} before sales tax: "
                    + "it undercuts shops that buy wholesale.", at);
    }

    /// <summary>The channels of the same currency on which a name is listed for people who keep the piece.</summary>
    private static IEnumerable<(string Channel, decimal Price, decimal BeforeTax, bool IsOfDesign)> AtRetail(Catalogue catalogue,
        Stored<Design> design, string name, string currency) =>
        from channel in catalogue.Channels
        where channel.Sound is { Sells: Sells.Retail } sound && sound.Currency == currency
        let price = catalogue.ListedUnder(name, design, channel.Key)?.Sound?.Price
        where price is not null
        select (channel.Key, price.Value, Sale.BeforeTaxOf(price.Value, channel.Document),
            name != design.Key && !catalogue.NamesListed(design, channel.Key).Contains(name));
}
