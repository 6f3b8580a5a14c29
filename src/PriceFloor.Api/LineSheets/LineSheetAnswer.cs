using System.Text.Json.Serialization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.LineSheets;

/// <summary>
/// What the buyers of one channel may be shown: what can be ordered, at which price, on which terms. It reveals no floor and no cost.
/// </summary>
public sealed record LineSheetAnswer
{
    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>The studio's name, from the cost profiles of the designs; null if none has one.</summary>
    /// <example>Example Flamework</example>
    public required string? StudioName { get; init; }

    /// <summary>Who buys here: "retail" people who keep the piece, "wholesale" shops that sell it on.</summary>
    public required Sells Sells { get; init; }

    /// <summary>ISO 4217 code of every amount.</summary>
    public required string Currency { get; init; }

    /// <summary>The day of the sheet, in UTC.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>Whether the prices contain sales tax.</summary>
    public required bool TaxIncluded { get; init; }

    /// <summary>The share of the price before sales tax that the shop or gallery keeps; absent if it keeps none.</summary>
    /// <example>0.45</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? ShopShare { get; init; }

    /// <summary>The smallest order that is taken, before sales tax; absent if the channel does not say.</summary>
    /// <example>180.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? MinimumOrder { get; init; }

    /// <summary>What else a buyer must know; absent if the channel does not say.</summary>
    /// <example>Paid within 30 days. What breaks in the post is replaced.</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? OrderTerms { get; init; }

    /// <summary>Every design that is listed on the channel, in order of key; a name with a price of its own has a line of its own.</summary>
    public required IReadOnlyList<LineSheetItemAnswer> Items { get; init; }

    /// <summary>
    /// With the scope "read": prices that are below their floor, and prices at retail that undercut the shops. No page and no sheet has them.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WarningAnswer>? Warnings { get; init; }

    /// <summary>Whether the channel has sales tax at all.</summary>
    [JsonIgnore]
    public bool HasSalesTax { get; init; }

    public static LineSheetAnswer Of(Catalogue catalogue, Stored<Channel> channel, string? profile)
    {
        var document = channel.Document;
        var money = Pricing.Numbers.Currency.Of(document.Currency);
        var retail = catalogue.Channels
            .Where(other => other.Sound is { Sells: Sells.Retail } sound && sound.Currency == document.Currency)
            .Select(other => other.Key).ToList();
        var designs = catalogue.Designs
            .Where(design => design.Sound is { } sound && (profile is null || sound.Profile == profile)
                && (catalogue.ListedPrices(design.Key).ContainsKey(channel.Key) || catalogue.NamesListed(design, channel.Key).Any()))
            .ToList();
        return new LineSheetAnswer
        {
            Channel = channel.Key,
            StudioName = NameOf(catalogue, designs),
            Sells = document.Sells,
            Currency = money.Code,
            Day = catalogue.Today,
            TaxIncluded = document.SalesTax.Included,
            HasSalesTax = document.SalesTax.Rate > 0,
            ShopShare = document.ShopShare > 0 ? document.ShopShare : null,
            MinimumOrder = document.MinimumOrder is { } order ? Rounding.WithDecimals(order, money.Decimals) : null,
            OrderTerms = document.OrderTerms,
            Items = [.. designs.SelectMany(design => LineSheetItemAnswer.AllOf(catalogue, design, channel, retail))],
        };
    }

    private static string? NameOf(Catalogue catalogue, IEnumerable<Stored<Design>> designs)
    {
        var names = designs.Select(design => design.Document.Profile).Distinct()
            .Select(key => catalogue.Profile(key)?.Sound?.StudioName).OfType<string>().Distinct().ToList();
        return names.Count > 0 ? string.Join(", ", names) : null;
    }
}
