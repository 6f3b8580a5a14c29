using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The retail channels on which a design is listed, side by side.</summary>
internal sealed class Listings
{
    private readonly List<(Stored<Channel> Channel, int Index, ChannelPrices Prices, decimal Price)> _retail;

    private Listings(List<(Stored<Channel>, int, ChannelPrices, decimal)> retail) => _retail = retail;

    /// <summary>One price for all of them; null where there is none.</summary>
    public OneRetailPriceAnswer? OneRetailPrice
    {
        get
        {
            if (_retail.Count == 0)
                return null;
            var (one, money) = (OnePrice.Of([.. _retail.Select(listed => listed.Prices)]), Currency.Of(_retail[0].Channel.Document.Currency));
            return new OneRetailPriceAnswer
            {
                Channels = [.. _retail.Select(listed => listed.Channel.Key)],
                FloorPrice = one.Found is { } floor ? Rounding.WithDecimals(floor.FloorPrice, money.Decimals) : null,
                TargetPrice = one.Found is { } target ? Rounding.WithDecimals(target.TargetPrice, money.Decimals) : null,
                Reason = one.Found is null ? one.Faults[0].Code : null,
            };
        }
    }

    /// <summary>Each channel of the studio's own that lists the design lower, before tax, than a shop or gallery that keeps a share.</summary>
    public IEnumerable<Warning> Warnings
    {
        get
        {
            var shops = _retail.Where(listed => listed.Channel.Document.ShopShare > 0).ToList();
            foreach (var own in _retail.Where(listed => listed.Channel.Document.ShopShare == 0))
                if (shops.FirstOrDefault(shop => BeforeTax(shop) > BeforeTax(own)) is { Channel: { } gallery })
                    yield return new Warning(WarningCodes.OwnShopUndercutsGallery,
                        $"\"{own.Channel.Key}\" lists the design lower than \"{gallery.Key}\", which keeps a share: shops stop selling what their "
                        + "customers find cheaper elsewhere.", FormattableString.Invariant($"/channels/{own.Index}/listedPrice"));
        }
    }

    /// <param name="floor">The design's floor.</param>
    /// <param name="channels">The channels of the answer.</param>
    public static Listings Of(DesignFloor floor, IReadOnlyList<Stored<Channel>> channels) => new(
    [
        .. channels.Select((channel, i) => (channel, i, Prices: floor.On(channel).Found, Price: floor.ListedOn(channel)))
            .Where(one => one.channel.Document.Sells == Sells.Retail && one.Prices is not null && one.Price is not null)
            .Select(one => (one.channel, one.i, one.Prices!, one.Price!.Value)),
    ]);

    private static decimal BeforeTax((Stored<Channel> Channel, int Index, ChannelPrices Prices, decimal Price) listed) =>
        Rounding.Settle(Sale.BeforeTaxOf(listed.Price, listed.Channel.Document));
}
