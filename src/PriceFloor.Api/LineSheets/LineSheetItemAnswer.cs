using System.Text.Json.Serialization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.LineSheets;

/// <summary>One design on a line sheet.</summary>
public sealed record LineSheetItemAnswer
{
    /// <summary>Key of the design: the code to order by.</summary>
    public required string Sku { get; init; }

    /// <summary>Its name for people.</summary>
    public string? Name { get; init; }

    /// <summary>The listed price: what this buyer pays.</summary>
    public required decimal Price { get; init; }

    /// <summary>
    /// For shops: the retail price that the studio suggests. It is the lowest price that the studio lists at retail in this currency, or
    /// retailMultiple times the shop's price before sales tax, rounded up. Absent on retail channels.
    /// </summary>
    /// <example>58.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? SuggestedRetail { get; init; }

    public static LineSheetItemAnswer Of(Catalogue catalogue, Stored<Design> design, Stored<Channel> channel, IEnumerable<string> retailChannels)
    {
        var money = Currency.Of(channel.Document.Currency);
        var listed = catalogue.ListedPrices(design.Key);
        var price = listed[channel.Key].Document.Price;
        return new LineSheetItemAnswer
        {
            Sku = design.Key,
            Name = design.Document.Name,
            Price = Rounding.WithDecimals(price, money.Decimals),
            SuggestedRetail = channel.Document.Sells == Sells.Wholesale && catalogue.Profile(design.Document.Profile)?.Sound is { } profile
                ? Rounding.WithDecimals(Suggested(profile), money.Decimals)
                : null,
        };

        decimal Suggested(CostProfile profile) => Pricing.Selling.SuggestedRetail.Of(
            [.. retailChannels.Select(key => listed.GetValueOrDefault(key)?.Sound?.Price).OfType<decimal>()],
            price, channel.Document.SalesTax, profile.PriceRule.RetailMultiple, money);
    }
}
