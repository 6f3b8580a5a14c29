using System.Collections.Frozen;
using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>Documents without those that a key does not see: they lead nowhere, in every answer alike.</summary>
public class PartlySeen(IDocuments all, ProfileAccess access) : IDocuments
{
    private static readonly IReadOnlyDictionary<string, Stored<ListedPrice>> s_none = FrozenDictionary<string, Stored<ListedPrice>>.Empty;

    private IReadOnlyList<Stored<Design>>? _designs;

    public IReadOnlyList<Stored<Channel>> Channels => all.Channels;

    public IReadOnlyList<Stored<Design>> Designs => _designs ??= [.. all.Designs.Where(design => Seen(design) is not null)];

    public Stored<CostProfile>? Profile(string key) => access.Sees(key) ? all.Profile(key) : null;

    public Stored<Design>? Design(string sku) => Seen(all.Design(sku));

    public Stored<Design>? DesignAlias(string alias) => Seen(all.DesignAlias(alias));

    public string? SameButForCase(string name) => all.SameButForCase(name) is { } key && Design(key) is not null ? key : null;

    public Stored<Channel>? Channel(string key) => all.Channel(key);

    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku) => Design(sku) is null ? s_none : all.ListedPrices(sku);

    private Stored<Design>? Seen(Stored<Design>? design) => design?.Sound is { } document && access.Sees(document.Profile) ? design : null;
}

/// <summary>The same of all documents at one position of the store.</summary>
public sealed class SeenDocuments(IWholeDocuments all, ProfileAccess access) : PartlySeen(all, access), IWholeDocuments
{
    private readonly ProfileAccess _access = access;

    public long Position => all.Position;

    public IWholeDocuments Before(IEnumerable<Change> changes, long position) => _access.Of(all.Before(changes, position));
}
