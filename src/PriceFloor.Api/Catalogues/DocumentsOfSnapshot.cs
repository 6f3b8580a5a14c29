using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>The documents as a transaction sees them, now or as they were; each read from the store when first asked for.</summary>
/// <param name="snapshot">What the transaction sees.</param>
/// <param name="asOf">At that moment; now if null.</param>
/// <param name="parsed">Documents that were read before: one whose revision is still the same is not parsed again.</param>
internal sealed class DocumentsOfSnapshot(Snapshot snapshot, long? asOf, IDocuments? parsed = null) : IDocuments
{
    private readonly Dictionary<(string, string), object?> _found = [];
    private readonly Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>> _prices = [];
    private IReadOnlyList<Stored<Channel>>? _channels;

    public Stored<CostProfile>? Profile(string key) => Find(Kinds.Profile, key, parsed?.Profile(key));

    public Stored<Design>? Design(string sku) => Find(Kinds.Design, sku, parsed?.Design(sku));

    public Stored<Design>? DesignAlias(string alias) => Designs.FirstOrDefault(design => design.Sound?.Aliases.Contains(alias) == true);

    public string? KeyInOtherCase(string name) =>
        Designs.FirstOrDefault(design => string.Equals(design.Key, name, StringComparison.OrdinalIgnoreCase))?.Key;

    public Stored<Channel>? Channel(string key) => Find(Kinds.Channel, key, parsed?.Channel(key));

    public IReadOnlyList<Stored<Channel>> Channels =>
        _channels ??= [.. snapshot.List(Kinds.Channel, asOf: asOf).Select(revision => Remember(revision, Stored<Channel>.Of))];

    public IReadOnlyList<Stored<Design>> Designs =>
        [.. snapshot.List(Kinds.Design, asOf: asOf).Select(revision => Remember(revision, Stored<Design>.Of))];

    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku)
    {
        if (!_prices.TryGetValue(sku, out var listed))
            _prices[sku] = listed = snapshot.List(Kinds.ListedPrice, ListedPriceKey.Beginning(sku), asOf: asOf) is { Count: > 0 } some
                ? some.ToDictionary(revision => ListedPriceKey.Of(revision.Key).Channel, Stored<ListedPrice>.Of)
                : IDocuments.NothingListed;
        return listed;
    }

    private Stored<T>? Find<T>(string kind, string key, Stored<T>? before) where T : class
    {
        if (_found.TryGetValue((kind, key), out var known))
            return (Stored<T>?)known;
        var revision = snapshot.Find(kind, key, asOf);
        var found = revision is null ? null : before?.Revision == revision.Number ? before : Stored<T>.Of(revision);
        _found[(kind, key)] = found;
        return found;
    }

    private Stored<T> Remember<T>(Revision revision, Func<Revision, Stored<T>> parse) where T : class
    {
        if (!_found.TryGetValue((revision.Kind, revision.Key), out var found) || found is null)
            _found[(revision.Kind, revision.Key)] = found = parse(revision);
        return (Stored<T>)found;
    }
}
