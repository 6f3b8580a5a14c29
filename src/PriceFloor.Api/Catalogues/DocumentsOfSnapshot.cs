using PriceFloor.Api.Documents;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// The documents as a transaction sees them, now or as they were. One that was not brought is read when it is first asked for, which only a store
/// allows that answers at once.
/// </summary>
/// <param name="snapshot">What the transaction sees.</param>
/// <param name="asOf">At that moment; now if null.</param>
/// <param name="parsed">Documents that were read before: one whose revision is still the same is not parsed again.</param>
internal sealed class DocumentsOfSnapshot(Snapshot snapshot, long? asOf, IDocuments? parsed = null) : IDocuments
{
    private readonly Dictionary<(string, string), object?> _found = [];
    private readonly Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>> _prices = [];
    private IReadOnlyList<Stored<Channel>>? _channels;

    /// <summary>Reads a profile, a design or a channel, so it is at hand.</summary>
    public async ValueTask Bring(DocumentName name) => _ = name.Kind switch
    {
        Kinds.Profile => Found(name, await snapshot.Find(name.Kind, name.Key, asOf), parsed?.Profile(name.Key)),
        Kinds.Design => Found(name, await snapshot.Find(name.Kind, name.Key, asOf), parsed?.Design(name.Key)),
        Kinds.Channel => (object?)Found(name, await snapshot.Find(name.Kind, name.Key, asOf), parsed?.Channel(name.Key)),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name.Kind, "Only a profile, a design or a channel is read alone."),
    };

    public Stored<CostProfile>? Profile(string key) => Find(Kinds.Profile, key, parsed?.Profile(key));

    public Stored<Design>? Design(string sku) => Find(Kinds.Design, sku, parsed?.Design(sku));

    public Stored<Design>? DesignAlias(string alias) => Designs.FirstOrDefault(design => design.Sound?.Aliases.Contains(alias) == true);

    public string? KeyInOtherCase(string name) =>
        Designs.FirstOrDefault(design => string.Equals(design.Key, name, StringComparison.OrdinalIgnoreCase))?.Key;

    public Stored<Channel>? Channel(string key) => Find(Kinds.Channel, key, parsed?.Channel(key));

    public Stored<ReadingRules>? ReadingRules(string key) => Find(Kinds.ReadingRules, key, parsed?.ReadingRules(key));

    public Stored<Plan>? Plan(string key) => Find(Kinds.Plan, key, parsed?.Plan(key));

    public IReadOnlyList<Stored<Plan>> Plans =>
        [.. AtOnce(snapshot.List(Kinds.Plan, asOf: asOf)).Select(revision => Remember(revision, Stored<Plan>.Of))];

    public IReadOnlyList<Stored<Channel>> Channels =>
        _channels ??= [.. AtOnce(snapshot.List(Kinds.Channel, asOf: asOf)).Select(revision => Remember(revision, Stored<Channel>.Of))];

    public IReadOnlyList<Stored<Design>> Designs =>
        [.. AtOnce(snapshot.List(Kinds.Design, asOf: asOf)).Select(revision => Remember(revision, Stored<Design>.Of))];

    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku)
    {
        if (!_prices.TryGetValue(sku, out var listed))
            _prices[sku] = listed = AtOnce(snapshot.List(Kinds.ListedPrice, ListedPriceKey.Beginning(sku), asOf: asOf)) is { Count: > 0 } some
                ? some.ToDictionary(revision => ListedPriceKey.Of(revision.Key).Place, Stored<ListedPrice>.Of)
                : IDocuments.NothingListed;
        return listed;
    }

    private Stored<T>? Find<T>(string kind, string key, Stored<T>? before) where T : class
    {
        if (_found.TryGetValue((kind, key), out var known))
            return (Stored<T>?)known;
        return Found(new(kind, key), AtOnce(snapshot.Find(kind, key, asOf)), before);
    }

    private Stored<T>? Found<T>(DocumentName name, Revision? revision, Stored<T>? before) where T : class
    {
        var found = revision is null ? null : before?.Revision == revision.Number ? before : Stored<T>.Of(revision);
        _found[(name.Kind, name.Key)] = found;
        return found;
    }

    private static T AtOnce<T>(ValueTask<T> answer) => answer.IsCompleted ? answer.GetAwaiter().GetResult()
        : throw new InvalidOperationException("The store does not answer at once; bring the document first, or read them all.");

    private Stored<T> Remember<T>(Revision revision, Func<Revision, Stored<T>> parse) where T : class
    {
        if (!_found.TryGetValue((revision.Kind, revision.Key), out var found) || found is null)
            _found[(revision.Kind, revision.Key)] = found = parse(revision);
        return (Stored<T>)found;
    }
}
