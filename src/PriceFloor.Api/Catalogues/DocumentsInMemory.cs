using PriceFloor.Api.Documents;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>All documents at one position of the store. It is immutable: a write makes another, which shares what stayed the same.</summary>
internal sealed class DocumentsInMemory : IDocuments
{
    private readonly Dictionary<string, Stored<CostProfile>> _profiles;
    private readonly Dictionary<string, Stored<Design>> _designs;
    private readonly Dictionary<string, Stored<Channel>> _channels;
    private readonly Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>> _prices;
    private readonly Dictionary<string, Stored<ReadingRules>> _rules;
    private readonly Dictionary<string, Stored<Plan>> _plans;
    private readonly Lazy<IReadOnlyList<Stored<Channel>>> _channelList;
    private readonly Lazy<IReadOnlyList<Stored<Design>>> _designList;
    private readonly Lazy<Dictionary<string, Stored<Design>>> _aliases;
    private readonly Lazy<Dictionary<string, string>> _withoutCase;
    private readonly Lazy<IReadOnlyList<Stored<ListedPrice>>> _clearing;

    private DocumentsInMemory(StorePoint point, FloorBook book, Dictionary<string, Stored<CostProfile>> profiles,
        Dictionary<string, Stored<Design>> designs, Dictionary<string, Stored<Channel>> channels,
        Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>> prices, Dictionary<string, Stored<ReadingRules>> rules,
        Dictionary<string, Stored<Plan>> plans, Lazy<IReadOnlyList<Stored<Channel>>>? channelList, Lazy<IReadOnlyList<Stored<Design>>>? designList)
    {
        (Point, Book, _profiles, _designs, _channels, _prices) = (point, book, profiles, designs, channels, prices);
        (_rules, _plans) = (rules, plans);
        _channelList = channelList ?? InOrder(channels);
        _designList = designList ?? InOrder(designs);
        _clearing = new Lazy<IReadOnlyList<Stored<ListedPrice>>>(() =>
            [.. prices.Values.SelectMany(ofDesign => ofDesign.Values).Where(price => price.Sound?.Clears is not null)]);
        _withoutCase = new Lazy<Dictionary<string, string>>(() => designs.Keys.GroupBy(key => key, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(same => same.Key, same => same.Order(StringComparer.Ordinal).First(), StringComparer.OrdinalIgnoreCase));
        _aliases = new Lazy<Dictionary<string, Stored<Design>>>(() => designs.Values
            .SelectMany(design => design.Sound?.Aliases ?? [], (design, alias) => (alias, design))
            // two designs with one alias are damage: nobody can say which is meant
            .GroupBy(named => named.alias).Where(same => same.Count() == 1).ToDictionary(same => same.Key, same => same.Single().design));
    }

    /// <summary>Where the store stood when they were so.</summary>
    public StorePoint Point { get; }

    /// <summary>The position of the newest revision in it.</summary>
    public long Position => Point.Position;

    /// <summary>What was computed from them.</summary>
    public FloorBook Book { get; }

    /// <summary>Answers about all of them. They are dropped with these documents; the book is handed on and must not keep them.</summary>
    public KeptAnswers Lists { get; } = new();

    public IReadOnlyList<Stored<Channel>> Channels => _channelList.Value;

    public IReadOnlyList<Stored<Design>> Designs => _designList.Value;

    /// <summary>The listed prices that clear pieces: looked for when a batch first asks.</summary>
    public IReadOnlyList<Stored<ListedPrice>> Clearing => _clearing.Value;

    public static DocumentsInMemory Empty => new(new StorePoint("", 0, 0), new FloorBook(), [], [], [], [], [], [], null, null);

    public Stored<CostProfile>? Profile(string key) => _profiles.GetValueOrDefault(key);

    public Stored<Design>? Design(string sku) => _designs.GetValueOrDefault(sku);

    public Stored<Design>? DesignAlias(string alias) => _aliases.Value.GetValueOrDefault(alias);

    public string? KeyInOtherCase(string name) => _withoutCase.Value.GetValueOrDefault(name);

    public Stored<Channel>? Channel(string key) => _channels.GetValueOrDefault(key);

    public Stored<ReadingRules>? ReadingRules(string key) => _rules.GetValueOrDefault(key);

    public Stored<Plan>? Plan(string key) => _plans.GetValueOrDefault(key);

    public IReadOnlyList<Stored<Plan>> Plans => [.. _plans.Values.OrderBy(plan => plan.Key, StringComparer.Ordinal)];

    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku) => _prices.GetValueOrDefault(sku, IDocuments.NothingListed);

    /// <summary>The documents after these revisions, each the newest of its document.</summary>
    public DocumentsInMemory With(IReadOnlyList<Revision> newest, long position) => With(newest, Point with { Position = position });

    /// <summary>The same, from a transaction that says where the store stands.</summary>
    public DocumentsInMemory With(IReadOnlyList<Revision> newest, StorePoint point) => With(newest, point, Book.Next(newest));

    /// <summary>The same before these changes.</summary>
    public DocumentsInMemory Before(IEnumerable<Change> changes, long position) => With(
        [.. changes.Select(change => change.Before ?? new Revision(0, change.Document.Kind, change.Document.Key, 0, 0, "", null))],
        Point with { Position = position }, Book.Apart());

    /// <summary>The same with other content in some documents, which nobody stores; floors that rest on none of them stay valid.</summary>
    public DocumentsInMemory Changed(IReadOnlyDictionary<DocumentName, object> documents)
    {
        var kinds = documents.Keys.Select(name => name.Kind).ToHashSet();
        return new DocumentsInMemory(
            Point,
            Book.Apart(),
            kinds.Contains(Kinds.Profile) ? Changed(_profiles, documents, Kinds.Profile) : _profiles,
            kinds.Contains(Kinds.Design) ? Changed(_designs, documents, Kinds.Design) : _designs,
            kinds.Contains(Kinds.Channel) ? Changed(_channels, documents, Kinds.Channel) : _channels,
            kinds.Contains(Kinds.ListedPrice) ? WithPrices(documents) : _prices,
            _rules,
            kinds.Contains(Kinds.Plan) ? Changed(_plans, documents, Kinds.Plan) : _plans,
            kinds.Contains(Kinds.Channel) ? null : _channelList,
            kinds.Contains(Kinds.Design) ? null : _designList);
    }

    private static Dictionary<string, Stored<T>> Changed<T>(Dictionary<string, Stored<T>> before, IReadOnlyDictionary<DocumentName, object> documents,
        string kind) where T : class
    {
        var after = new Dictionary<string, Stored<T>>(before);
        foreach (var (name, document) in documents.Where(document => document.Key.Kind == kind))
            after[name.Key] = after[name.Key].With((T)document);
        return after;
    }

    private Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>> WithPrices(IReadOnlyDictionary<DocumentName, object> documents)
    {
        var after = new Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>>(_prices);
        foreach (var ofDesign in documents.Where(document => document.Key.Kind == Kinds.ListedPrice)
            .Select(document => (Key: ListedPriceKey.Of(document.Key.Key), Price: (ListedPrice)document.Value)).GroupBy(price => price.Key.Sku))
        {
            var prices = new Dictionary<string, Stored<ListedPrice>>(ListedPrices(ofDesign.Key));
            foreach (var (key, price) in ofDesign)
                prices[key.Place] = prices.GetValueOrDefault(key.Place)?.With(price) ?? Stored<ListedPrice>.Unsaved(key.ToString(), price);
            after[ofDesign.Key] = prices;
        }

        return after;
    }

    private DocumentsInMemory With(IReadOnlyList<Revision> newest, StorePoint point, FloorBook book)
    {
        var kinds = newest.Select(revision => revision.Kind).ToHashSet();
        return new DocumentsInMemory(
            point,
            book,
            kinds.Contains(Kinds.Profile) ? Changed(_profiles, newest, Kinds.Profile) : _profiles,
            kinds.Contains(Kinds.Design) ? Changed(_designs, newest, Kinds.Design) : _designs,
            kinds.Contains(Kinds.Channel) ? Changed(_channels, newest, Kinds.Channel) : _channels,
            kinds.Contains(Kinds.ListedPrice) ? WithPrices(newest.Where(revision => revision.Kind == Kinds.ListedPrice)) : _prices,
            kinds.Contains(Kinds.ReadingRules) ? Changed(_rules, newest, Kinds.ReadingRules) : _rules,
            kinds.Contains(Kinds.Plan) ? Changed(_plans, newest, Kinds.Plan) : _plans,
            kinds.Contains(Kinds.Channel) ? null : _channelList,
            kinds.Contains(Kinds.Design) ? null : _designList);
    }

    private static Dictionary<string, Stored<T>> Changed<T>(Dictionary<string, Stored<T>> before, IEnumerable<Revision> newest, string kind)
        where T : class
    {
        var after = new Dictionary<string, Stored<T>>(before);
        foreach (var revision in newest.Where(revision => revision.Kind == kind))
            if (revision.IsDeletion)
                after.Remove(revision.Key);
            else
                after[revision.Key] = Stored<T>.Of(revision);
        return after;
    }

    private Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>> WithPrices(IEnumerable<Revision> newest)
    {
        var after = new Dictionary<string, IReadOnlyDictionary<string, Stored<ListedPrice>>>(_prices);
        foreach (var ofDesign in newest.GroupBy(revision => ListedPriceKey.Of(revision.Key).Sku))
        {
            var prices = new Dictionary<string, Stored<ListedPrice>>(ListedPrices(ofDesign.Key));
            foreach (var revision in ofDesign)
            {
                var place = ListedPriceKey.Of(revision.Key).Place;
                if (revision.IsDeletion)
                    prices.Remove(place);
                else
                    prices[place] = Stored<ListedPrice>.Of(revision);
            }

            after[ofDesign.Key] = prices;
        }

        return after;
    }

    private static Lazy<IReadOnlyList<Stored<T>>> InOrder<T>(Dictionary<string, Stored<T>> documents) where T : class =>
        new(() => [.. documents.Values.OrderBy(document => document.Key, StringComparer.Ordinal)]);
}
