using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.ListedPrices;

/// <summary>Listed prices: documents of their own below a design, so a shop can report its prices without changing how a piece is made.</summary>
public sealed class ListedPriceDocuments(IValidator<ListedPrice> validator, CatalogueSource catalogues)
    : DocumentKind<ListedPrice>(Kinds.ListedPrice, validator)
{
    public override IEnumerable<(string Property, string Value)> NamesOf(string key)
    {
        var (sku, channel, alias) = ListedPriceKey.Of(key);
        return alias is null ? [("sku", sku), ("channel", channel)] : [("sku", sku), ("channel", channel), ("alias", alias)];
    }

    public override async ValueTask<Outcome<Checked<ListedPrice>>> Check(Writing writing, string key, ListedPrice document,
        Stored<ListedPrice>? before, ProfileAccess access)
    {
        var (sku, channelKey, alias) = ListedPriceKey.Of(key);
        var catalogue = await catalogues.SeenBy(access).Within(writing, [new(Kinds.Design, sku), new(Kinds.Channel, channelKey)]);
        if (catalogue.Design(sku) is not { } design)
            return RequestFault.NotFound($"There is no design \"{sku}\".");
        if (alias is not null && !design.Document.Aliases.Contains(alias))
            return RequestFault.NotFound($"\"{alias}\" is no name of the design \"{sku}\".", "alias");
        if (catalogue.Channel(channelKey) is not { } channel)
            return RequestFault.NotFound($"There is no channel \"{channelKey}\".", "channel");

        var currency = Currency.Of(channel.Document.Currency);
        if (document.Currency is { } code && code != currency.Code)
            return RequestFault.Of(ProblemTypes.CurrencyMismatch,
                $"The channel \"{channelKey}\" sells in {currency.Code}, the price is in {code}; nothing is ever converted.");
        if (ChannelRules.TooFine(document.Price, "price", currency) is { } detail)
            return RequestFault.Invalid(new InputError { Pointer = "#/price", Code = FaultCodes.TooManyDecimals, Detail = detail });
        return new Checked<ListedPrice>(document with { Currency = currency.Code }, currency,
            alias is null
                ? [new DocumentName(Kinds.Channel, channelKey)]
                : [new DocumentName(Kinds.Channel, channelKey), new DocumentName(Kinds.ListedName, $"{sku}/{alias}")]);
    }
}
