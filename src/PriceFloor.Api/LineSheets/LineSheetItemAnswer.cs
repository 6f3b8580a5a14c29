using System.Text.Json.Serialization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.LineSheets;

/// <summary>One design on a line sheet.</summary>
public sealed record LineSheetItemAnswer
{
    /// <summary>Key of the design, or the name that has a price of its own: the code to order by.</summary>
    public required string Sku { get; init; }

    /// <summary>Its name for people: the design's, or the listed name if that is words.</summary>
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

    /// <summary>What a printed page has as its code: that of the design where a listed name is words, which stand under the design.</summary>
    [JsonIgnore]
    public required string Code { get; init; }

    /// <summary>The line of the design itself if it is listed, and one for each name with a price of its own.</summary>
    public static IEnumerable<LineSheetItemAnswer> AllOf(Catalogue catalogue, Stored<Design> design, Stored<Channel> channel,
        IReadOnlyList<string> retailChannels) =>
            new[] { design.Key }.Where(_ => catalogue.ListedPrices(design.Key).ContainsKey(channel.Key))
                .Concat(catalogue.NamesListed(design, channel.Key))
                .Select(name => Of(catalogue, design, channel, retailChannels, name));

    private static LineSheetItemAnswer Of(Catalogue catalogue, Stored<Design> design, Stored<Channel> channel, IReadOnlyList<string> retailChannels,
        string name)
    {
        var money = Currency.Of(channel.Document.Currency);
        var price = catalogue.ListedUnder(name, design, channel.Key)!.Document.Price;
        var isWords = name != design.Key && name.Any(char.IsWhiteSpace);
        return new LineSheetItemAnswer
        {
            Sku = name,
            Name = isWords ? name : design.Document.Name,
            Code = isWords ? design.Key : name,
            Price = Rounding.WithDecimals(price, money.Decimals),
            SuggestedRetail = channel.Document.Sells == Sells.Wholesale && catalogue.Profile(design.Document.Profile)?.Sound is { } profile
                ? Rounding.WithDecimals(Suggested(profile), money.Decimals)
                : null,
        };

        decimal Suggested(CostProfile profile) => Pricing.Selling.SuggestedRetail.Of(
            [.. retailChannels.Select(key => catalogue.ListedUnder(name, design, key)?.Sound?.Price).OfType<decimal>()],
            price, channel.Document.SalesTax, profile.PriceRule.RetailMultiple, money);
    }
}
