using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>A question to the log: who asks, of which moment and which days. Reads the lines of designs and finds what they say.</summary>
internal sealed class LoggedQuestion
{
    private readonly Snapshot _snapshot;
    private readonly DateTimeOffset? _asOf;
    private readonly ProfileAccess _access;
    private HashSet<string>? _everListed;

    private LoggedQuestion(Snapshot snapshot, Catalogue catalogue, StoredLog log, (DateTimeOffset? AsOf, ProfileAccess Access) asked) =>
        (_snapshot, Catalogue, Log, _asOf, _access) = (snapshot, catalogue, log, asked.AsOf, asked.Access);

    public Catalogue Catalogue { get; }

    public StoredLog Log { get; }

    /// <summary>Whether the caller may see every design.</summary>
    public bool SeesAll => _access.IsWhole;

    public static async ValueTask<LoggedQuestion> OfAsync(Snapshot snapshot, LogWatch watch, Catalogue catalogue, EvidenceChoices choices,
        (DateTimeOffset? AsOf, ProfileAccess Access) asked) =>
        new(snapshot, catalogue, await StoredLog.OfAsync(snapshot, watch, asked.AsOf, choices), asked);

    /// <summary>The same log, asked otherwise.</summary>
    public LoggedQuestion About(EvidenceChoices choices) => new(_snapshot, Catalogue, Log.About(choices), (_asOf, _access));

    /// <summary>
    /// What spoils what is kept of a design; null where nothing is kept: the past is asked for seldom, and those who may not see all designs share
    /// the costs of orders with fewer of them.
    /// </summary>
    public long? StampOf(string sku) => SeesAll && _asOf is null ? Log.StampOf(sku) : null;

    /// <summary>The designs of a profile, in order of key.</summary>
    public IEnumerable<Stored<Design>> DesignsOf(Stored<CostProfile> profile) =>
        Catalogue.Designs.Where(design => design.Sound?.Profile == profile.Key);

    /// <summary>The floors of a profile's designs that the log names, in order of key.</summary>
    public IEnumerable<DesignFloor> FloorsOf(Stored<CostProfile> profile)
    {
        foreach (var design in DesignsOf(profile))
            if (Log.Names.Design(design.Key) is not null && Catalogue.Floor(profile, design).Found is { } floor)
                yield return floor;
    }

    /// <summary>How many pieces of a design came out good.</summary>
    public async ValueTask<GoodLots> LotsOf(Stored<Design> design)
    {
        var bench = await Log.BenchOf(design.Key);
        if (bench.Count == 0)
            return GoodLots.Of(design.Document, []);
        var since = Log.Choices.From is null ? (await HistoryOf(design.Key, [])).MadeSoSince(design.Key) : null;
        return GoodLots.Of(design.Document, bench.FindAll(entry => !(entry.On < since)));
    }

    /// <summary>The evidence of one design, the channels that its lines name, and what the store remembers of it.</summary>
    public async ValueTask<(StudioEvidence Studio, IReadOnlyList<NamedChannel> Channels, StoredHistory History)> EvidenceOf(DesignFloor floor,
        GoodPriors good)
    {
        var sku = floor.Design.Key;
        var (own, bench) = (await Log.MovementsOf(sku), await Log.BenchOf(sku));
        var others = (await Log.InOrdersWith(sku, own)).Where(line => SeesAll || Catalogue.Design(line.Sku) is not null);
        var channels = Channels(own);
        var history = await HistoryOf(sku, Catalogue.ListedPrices(sku).Keys.Concat(channels).Distinct().ToList());
        var known = new KnownStudio([new KnownDesign(sku, floor.Floor.UnitCost, history.MadeSoSince(sku))], key => Catalogue.Channel(key)?.Sound,
            history.Listed, good);
        var lines = InOrder.Of(InOrder.Of(own, InOrder.ByDay), InOrder.Of(others, InOrder.ByDay), InOrder.ByDay);
        return (StudioEvidence.Of(lines, bench, Log.Sources, null, known, Log.Choices), Named(channels), history);
    }

    /// <summary>What became of a design's pieces, and its movements, without anything else that they say.</summary>
    public async ValueTask<(ShelfHistory Shelf, List<Movement> Movements)> ShelfOf(Stored<Design> design)
    {
        var movements = await Log.MovementsOf(design.Key);
        var bench = Log.Sources.Any(source => source.CountsAsMade) ? await Log.BenchOf(design.Key) : [];
        return (StudioEvidence.ShelfOf(design.Key, design.Document, movements, bench, Log.Sources, Log.Choices), movements);
    }

    /// <summary>What was listed for a design on a channel, in order of day.</summary>
    public static IReadOnlyList<PriceStep> Steps(StoredHistory history, string sku, string channel, DateOnly to) =>
        [.. history.PricesOf(sku, channel).Where(price => price.Day <= to).Select(price => new PriceStep(price.Day, price.Price))];

    /// <summary>The first day of each event of a stall.</summary>
    public async ValueTask<IReadOnlyList<DateOnly>> EventsOf(string channel)
    {
        var designs = SeesAll ? null : Catalogue.Designs.Select(design => design.Key);
        return StallEvents.Of(await Log.FairDays(channel, designs));
    }

    /// <summary>The channels that lines name, by key.</summary>
    private static IReadOnlyCollection<string> Channels(List<Movement> lines)
    {
        var channels = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var line in lines)
            if (line.Channel is { } channel)
                channels.Add(channel);
        return channels;
    }

    private IReadOnlyList<NamedChannel> Named(IEnumerable<string> channels) =>
        [.. channels.Select(key => new NamedChannel(key, Catalogue.Channel(key)))];

    /// <summary>
    /// Learns which prices were ever listed, in one go: most designs are on few channels, and to look for each price that never was takes longer.
    /// </summary>
    public async ValueTask LookForListed() => _everListed ??= (await _snapshot.KeysEver(Kinds.ListedPrice, "")).ToHashSet(StringComparer.Ordinal);

    /// <summary>What the store remembers of a design, and of what was listed for it.</summary>
    public ValueTask<StoredHistory> HistoryOf(string sku, IReadOnlyList<string> channels) => StoredHistory.OfAsync(_snapshot,
        Catalogue.Design(sku)?.Revision == 1 ? [] : [sku], // it was never changed
        channels.Where(channel => _everListed?.Contains(new ListedPriceKey(sku, channel).ToString()) != false).Select(channel => (sku, channel)),
        _asOf);
}
