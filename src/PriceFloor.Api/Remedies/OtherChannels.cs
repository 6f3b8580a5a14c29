using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Remedies;

/// <summary>Where else a design could be sold.</summary>
internal static class OtherChannels
{
    /// <summary>The other stored channels of the currency, in order of key, with the design's prices there.</summary>
    public static List<OtherChannel> Of(DesignFloor floor, Stored<Channel> than, Catalogue catalogue) =>
    [
        .. catalogue.Channels.Where(channel => channel.Sound is not null && channel.Key != than.Key)
            .Select(channel => (channel.Key, Prices: floor.On(channel).Found, Listed: floor.ListedOn(channel)))
            .Where(other => other.Prices is not null)
            .Select(other => new OtherChannel(other.Key, other.Prices!, other.Listed)),
    ];
}
