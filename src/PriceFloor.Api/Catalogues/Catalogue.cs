using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Statements;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// The documents as they are, or were, at one moment, and the floors computed from them. What the caller's key may not see is absent, as if it did
/// not exist, in every answer.
/// </summary>
public class Catalogue
{
    private const int FewDesigns = 500;

    private readonly IDocuments _documents;
    private readonly ProfileAccess _access;
    private readonly FloorBook _book;
    private IReadOnlyList<Stored<Design>>? _designs;
    private FloorBook? _inline;

    internal Catalogue(IDocuments documents, FloorBook book, ProfileAccess access, DateTimeOffset moment)
    {
        (_documents, _book, _access) = (documents, book, access);
        Today = DateOnly.FromDateTime(moment.UtcDateTime);
    }

    /// <summary>The day for which the answer is given, in UTC.</summary>
    public DateOnly Today { get; }

    /// <summary>When a year starts if its profile does not say.</summary>
    public DateOnly YearStart => new(Today.Year, 1, 1);

    /// <summary>All channels in order of key.</summary>
    public IReadOnlyList<Stored<Channel>> Channels => _documents.Channels;

    /// <summary>Those that can be read; looked for when the first is asked for.</summary>
    public IEnumerable<Channel> SoundChannels
    {
        get
        {
            foreach (var channel in Channels)
                if (channel.Sound is { } sound)
                    yield return sound;
        }
    }

    /// <summary>All designs in order of key.</summary>
    public IReadOnlyList<Stored<Design>> Designs =>
        _access.IsWhole ? _documents.Designs : _designs ??= [.. _documents.Designs.Where(design => Seen(design) is not null)];

    public Stored<CostProfile>? Profile(string key) => _access.Sees(key) ? _documents.Profile(key) : null;

    public Stored<Design>? Design(string sku) => Seen(_documents.Design(sku));

    /// <summary>The design with that key, else the one that has the name as an alias: bodies and sheets use both.</summary>
    public Stored<Design>? DesignNamed(string name) => Design(name) ?? Seen(_documents.DesignAlias(name));

    /// <summary>The key of a design that differs from a name only by case.</summary>
    public string? KeyInOtherCase(string name) => _documents.KeyInOtherCase(name) is { } key && Design(key) is not null ? key : null;

    public Stored<Channel>? Channel(string key) => _documents.Channel(key);

    /// <summary>A set of reading rules; they serve all profiles, so a key that is limited to some sees none.</summary>
    public Stored<ReadingRules>? ReadingRules(string key) => _access.IsWhole ? _documents.ReadingRules(key) : null;

    /// <summary>The plan of that key, if the key sees its profile.</summary>
    public Stored<Plan>? Plan(string key) => _documents.Plan(key) is { } plan && Sees(plan) ? plan : null;

    /// <summary>The plans of profiles that the key sees, in order of key.</summary>
    public IEnumerable<Stored<Plan>> Plans => _documents.Plans.Where(Sees);

    /// <summary>
    /// What a message adds for callers who may read: the design that was probably meant. Among many designs only the same name in other case is
    /// looked for, so that a sheet full of unknown names is answered as fast.
    /// </summary>
    public string HintOfDesign(string sku) =>
        KeyInOtherCase(sku) is { } same ? $", but there is \"{same}\""
        : Designs.Count <= FewDesigns ? NearestName.Hint(sku, [.. Designs.Select(design => design.Key)])
        : "";

    /// <summary>What a message adds for callers who may read: the channel that was probably meant, or those that there are.</summary>
    public string HintOfChannel(string key) => NearestName.Hint(key, [.. Channels.Select(channel => channel.Key)]);

    /// <summary>
    /// The prices listed for a design: its own by channel, and those of its other names by channel and name (<see cref="ListedPriceKey.Place"/>).
    /// </summary>
    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku) =>
        _access.IsWhole || Design(sku) is not null ? _documents.ListedPrices(sku) : IDocuments.NothingListed;

    /// <summary>What is listed on a channel under a name of a design: the name's own price, else the design's.</summary>
    public Stored<ListedPrice>? ListedUnder(string name, Stored<Design> design, string channel)
    {
        var listed = ListedPrices(design.Key);
        return (name == design.Key ? null : listed.GetValueOrDefault(ListedPriceKey.PlaceOf(channel, name))) ?? listed.GetValueOrDefault(channel);
    }

    /// <summary>The names of a design that have a price of their own on a channel, in order.</summary>
    public IEnumerable<string> NamesListed(Stored<Design> design, string channel)
    {
        var listed = ListedPrices(design.Key);
        return listed.Count == 0 || design.Sound is not { Aliases: { Count: > 0 } names } ? []
            : names.Where(name => listed.ContainsKey(ListedPriceKey.PlaceOf(channel, name))).Order(StringComparer.Ordinal);
    }

    /// <summary>A profile's year, or why there is none.</summary>
    public Outcome<StudioYear> Year(Stored<CostProfile> profile) => BookFor(profile.Revision).Year(profile, YearStart);

    /// <summary>A design's floor in a profile's year, or why there is none. Computed once while nothing that it rests on changes.</summary>
    public Outcome<DesignFloor> Floor(Stored<CostProfile> profile, Stored<Design> design) =>
        BookFor(profile.Revision is null ? null : design.Revision).Floor(this, profile, design);

    private bool Sees(Stored<Plan> plan) => _access.IsWhole || (plan.Sound is { } sound && _access.Sees(sound.Profile));

    /// <summary>What comes with one request is useless to another.</summary>
    private FloorBook BookFor(long? revision) => revision is null ? _inline ??= _book.Apart() : _book;

    private Stored<Design>? Seen(Stored<Design>? design) =>
        _access.IsWhole ? design : design?.Sound is { } document && _access.Sees(document.Profile) ? design : null;
}
