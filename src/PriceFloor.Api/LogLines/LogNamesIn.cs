using PriceFloor.Api.Catalogues;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.LogLines;

/// <summary>The designs and channels that lines may name, each looked up once.</summary>
internal sealed class LogNamesIn(WholeCatalogue catalogue)
{
    private readonly Dictionary<string, string?> _designs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, KnownChannel?> _channels = new(StringComparer.Ordinal);

    public KnownNames Known => new(DesignOf, ChannelOf);

    private string? DesignOf(string name) =>
        _designs.TryGetValue(name, out var known) ? known : _designs[name] = catalogue.DesignNamed(name)?.Key;

    private KnownChannel? ChannelOf(string key) => _channels.TryGetValue(key, out var known) ? known
        : _channels[key] = catalogue.Channel(key)?.Sound is { } channel ? new KnownChannel(key, Currency.Of(channel.Currency)) : null;
}
