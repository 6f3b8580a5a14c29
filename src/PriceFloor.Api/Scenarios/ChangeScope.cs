using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>
/// The documents that a request's changes may name: its profile, its plan, its quote, the designs of this profile, their prices, and the channels.
/// What the caller's key may not see is not among them.
/// </summary>
public sealed class ChangeScope
{
    private const string Every = ListToken.Every;

    private static readonly Dictionary<string, ChangeSchema> s_schemas = new()
    {
        [Kinds.Profile] = ChangeSchema.Of<CostProfile>(),
        [Kinds.Design] = ChangeSchema.Of<Design>("profile"),
        [Kinds.Channel] = ChangeSchema.Of<Channel>(),
        [Kinds.ListedPrice] = ChangeSchema.Of<ListedPrice>(),
        [Kinds.Plan] = ChangeSchema.Of<Plan>("profile"),
        [Kinds.Quote] = ChangeSchema.Of<Quote>("profile"),
    };

    public ChangeScope(WholeCatalogue catalogue, Stored<CostProfile> profile, Stored<Plan>? plan = null) =>
        (Catalogue, Profile, Plan) = (catalogue, profile, plan);

    public WholeCatalogue Catalogue { get; }

    public Stored<CostProfile> Profile { get; }

    /// <summary>The plan that the request names; null if it names none.</summary>
    public Stored<Plan>? Plan { get; }

    /// <summary>The quote that the request names; null if it names none.</summary>
    public Stored<Quote>? Quote { get; init; }

    /// <summary>The designs of the profile, in order of key; damaged ones are left out.</summary>
    public IEnumerable<Stored<Design>> Designs => Catalogue.Designs.Where(IsOfProfile);

    /// <summary>What of a kind of document can change.</summary>
    public static ChangeSchema SchemaOf(string kind) => s_schemas[kind];

    /// <summary>The document as it is stored; null for a price that is not listed. Throws <see cref="DamagedDocumentException"/>.</summary>
    public object? Find(DocumentName name) => name.Kind switch
    {
        Kinds.Profile => Profile.Document,
        Kinds.Design => Catalogue.Design(name.Key)?.Document,
        Kinds.Channel => Catalogue.Channel(name.Key)?.Document,
        Kinds.Plan => Plan!.Document,
        Kinds.Quote => Quote!.Document,
        _ => Listed(ListedPriceKey.Of(name.Key))?.Document,
    };

    /// <summary>How answers name a document that they rest on; null for a price that is not listed.</summary>
    public string? BasisOf(DocumentName name) => name.Kind switch
    {
        Kinds.Profile => Profile.Basis,
        Kinds.Design => Catalogue.Design(name.Key)?.Basis,
        Kinds.Channel => Catalogue.Channel(name.Key)?.Basis,
        Kinds.Plan => Plan!.Basis,
        Kinds.Quote => Quote!.Basis,
        _ => Listed(ListedPriceKey.Of(name.Key))?.Basis,
    };

    /// <summary>How answers name the stored ones of documents that changes name, in order.</summary>
    public IReadOnlyList<string> BasisOf(IEnumerable<DocumentName> changed) =>
        [.. changed.Where(name => BasisOf(name) is not null).Select(name => $"{name.Kind}:{BasisOf(name)}").Order(StringComparer.Ordinal)];

    /// <summary>The documents that <c>of</c> names, in order, or why it names none.</summary>
    public Outcome<List<DocumentName>> Named(string of)
    {
        var colon = of.IndexOf(':', StringComparison.Ordinal);
        if (colon > 0 && s_schemas.ContainsKey(of[..colon]))
            return OfKind(of[..colon], of[(colon + 1)..]) is { Count: > 0 } found ? found : Unknown(of);
        var all = s_schemas.Keys.Select(kind => OfKind(kind, of)).Where(documents => documents.Count > 0).ToList();
        return all.Count switch
        {
            1 => all[0],
            0 => Unknown(of),
            _ => new Fault("/of", FaultCodes.AmbiguousName, $"\"{of}\" is the key of "
                + $"{string.Join(" and of ", all.Select(documents => $"a {documents[0].Kind}"))}; write the kind before it, such as "
                + $"{all[0][0].Kind}:{of}."),
        };
    }

    private List<DocumentName> OfKind(string kind, string key) => kind switch
    {
        Kinds.Profile => key == Every || key == Profile.Key ? [new(kind, Profile.Key)] : [],
        Kinds.Plan => Plan is not null && (key == Every || key == Plan.Key) ? [new(kind, Plan.Key)] : [],
        Kinds.Quote => Quote is not null && (key == Every || key == Quote.Key) ? [new(kind, Quote.Key)] : [],
        Kinds.Design => [.. DesignsNamed(key).Select(sku => new DocumentName(kind, sku))],
        Kinds.Channel => [.. ChannelsNamed(key).Select(channel => new DocumentName(kind, channel))],
        _ => ListedPriceKey.Find(key) is { } price ? PricesNamed(price) : [],
    };

    private IEnumerable<string> DesignsNamed(string key) =>
        key == Every ? Designs.Select(design => design.Key) : Catalogue.Design(key) is { } design && IsOfProfile(design) ? [key] : [];

    private IEnumerable<string> ChannelsNamed(string key) => key == Every
        ? Catalogue.Channels.Where(channel => channel.Sound is not null).Select(channel => channel.Key)
        : Catalogue.Channel(key) is not null ? [key] : [];

    /// <summary>Of every design or channel only the listed prices are meant; one price may be new.</summary>
    private List<DocumentName> PricesNamed(ListedPriceKey price) =>
    [
        .. DesignsNamed(price.Sku).SelectMany(sku => ChannelsNamed(price.Channel).Select(channel => new ListedPriceKey(sku, channel)))
            .Where(one => (price.Sku != Every && price.Channel != Every) || Listed(one)?.Sound is not null)
            .Select(one => new DocumentName(Kinds.ListedPrice, one.ToString())),
    ];

    private Stored<ListedPrice>? Listed(ListedPriceKey key) => Catalogue.ListedPrices(key.Sku).GetValueOrDefault(key.Channel);

    private bool IsOfProfile(Stored<Design> design) => design.Sound?.Profile == Profile.Key;

    private Fault Unknown(string of) => new("/of", InputCodes.UnknownReference,
        $"\"{of}\" is not the profile \"{Profile.Key}\", {(Plan is null ? "" : $"the plan \"{Plan.Key}\", ")}one of its designs or of their "
        + "prices, or a channel.");
}
