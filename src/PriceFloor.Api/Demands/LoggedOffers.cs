using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Storage;

namespace PriceFloor.Api.Demands;

/// <summary>What the designs of a profile were offered at, on which days, and how often they were ordered: read one after another.</summary>
internal sealed class LoggedOffers
{
    private readonly Snapshot _snapshot;
    private readonly StoredLog _log;
    private readonly Catalogue _catalogue;
    private readonly EvidenceChoices _choices;
    private readonly DateTimeOffset? _asOf;
    private readonly Dictionary<string, Channel> _channels = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<DateOnly>> _events = new(StringComparer.Ordinal);

    private LoggedOffers(Snapshot snapshot, StoredLog log, Catalogue catalogue, EvidenceChoices choices, DateTimeOffset? asOf) =>
        (_snapshot, _log, _catalogue, _choices, _asOf) = (snapshot, log, catalogue, choices, asOf);

    /// <summary>The channels of the profile's currency, by key.</summary>
    public IReadOnlyDictionary<string, Channel> Channels => _channels;

    /// <summary>The reader of a profile's offers.</summary>
    public static async ValueTask<LoggedOffers> OfAsync(Snapshot snapshot, StoredLog log, Catalogue catalogue, Currency currency,
        EvidenceChoices choices, DateTimeOffset? asOf, ProfileAccess access)
    {
        var offers = new LoggedOffers(snapshot, log, catalogue, choices, asOf);
        foreach (var channel in catalogue.Channels)
            if (channel.Sound is { } sound && sound.Currency == currency.Code)
                offers._channels.Add(channel.Key, sound);
        foreach (var (key, channel) in offers._channels)
            if (channel.Stall is not null)
            {
                var sold = await log.MovementsOn(key);
                offers._events[key] = StallEvents.Of(sold.Where(line => line.What == MovementKind.Sold
                    && (access.IsWhole || catalogue.Design(line.Sku) is not null)));
            }

        return offers;
    }

    /// <summary>The offers of all designs of a profile.</summary>
    public async ValueTask<IReadOnlyList<OfferedDesign>> OfProfile(string profile)
    {
        var offers = new List<OfferedDesign>();
        foreach (var design in _catalogue.Designs.Where(design => design.Sound?.Profile == profile))
            offers.AddRange((await Of(design)).Offers);
        return offers;
    }

    /// <summary>What became of a design's pieces, and its offers on all channels.</summary>
    public async ValueTask<(ShelfHistory Shelf, IReadOnlyList<OfferedDesign> Offers)> Of(Stored<Design> design)
    {
        var movements = await _log.MovementsOf(design.Key);
        var bench = _log.Sources.Any(source => source.CountsAsMade) ? await _log.BenchOf(design.Key) : [];
        var shelf = StudioEvidence.ShelfOf(design.Key, design.Document, movements, bench, _log.Sources, _choices);
        var listed = await Listed(design.Key, movements);
        return (shelf, OfferedDesign.Of(design.Key, shelf, movements, null, _channels, channel => Steps(listed, design.Key, channel),
            key => _events.GetValueOrDefault(key) ?? []));
    }

    private IReadOnlyList<PriceStep> Steps(StoredHistory history, string sku, string channel) =>
        [.. history.PricesOf(sku, channel).Where(price => price.Day <= _choices.To).Select(price => new PriceStep(price.Day, price.Price))];

    /// <summary>The prices of channels on which it is listed now, or was sold.</summary>
    private async ValueTask<StoredHistory> Listed(string sku, List<Movement> movements)
    {
        var channels = _catalogue.ListedPrices(sku).Keys.Concat(movements.Where(line => line.What == MovementKind.Sold)
            .Select(line => line.Channel).OfType<string>()).Distinct().Where(_channels.ContainsKey).Select(channel => (sku, channel));
        return await StoredHistory.OfAsync(_snapshot, [], channels, _asOf);
    }
}
