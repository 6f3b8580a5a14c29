using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Channels;

/// <summary>Channels: fills in their price step, and keeps their currency while prices are listed on them.</summary>
public sealed class ChannelDocuments(IValidator<Channel> validator) : DocumentKind<Channel>(Kinds.Channel, validator)
{
    public override async ValueTask<Outcome<Checked<Channel>>> Check(Writing writing, string key, Channel document, Stored<Channel>? before,
        ProfileAccess access)
    {
        var currency = Currency.Of(document.Currency);
        if (before?.Sound is { } stored && stored.Currency != document.Currency && await writing.UsersOf(Name, key) is { Count: > 0 } prices)
            return RequestFault.InUse($"Prices in {stored.Currency} are listed on this channel; store the other currency as a channel of its own.",
                [.. prices.Select(price => new Usage(price.Kind, price.Key))]);
        return new Checked<Channel>(document with { PriceStep = document.PriceStep ?? currency.MinorUnit }, currency, []);
    }
}
