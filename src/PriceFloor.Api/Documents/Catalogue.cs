using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>The documents as they stand (or stood) at one moment, and the day for which an answer is given.</summary>
public class Catalogue(IDocuments documents, DateTimeOffset moment)
{
    protected DateTimeOffset At { get; } = moment;

    public IDocuments Documents { get; } = documents;

    /// <summary>The day for which the answer is given.</summary>
    public DateOnly Today { get; } = DateOnly.FromDateTime(moment.UtcDateTime);

    /// <summary>Where a profile does not say when its year starts.</summary>
    public DateOnly YearStart => new(Today.Year, 1, 1);

    public Stored<CostProfile>? Profile(string key) => Documents.Profile(key);

    public Stored<Design>? Design(string sku) => Documents.Design(sku);

    /// <summary>The design of that key, else the one that has the name as an alias: what bodies and sheets name.</summary>
    public Stored<Design>? DesignNamed(string name) => Documents.Design(name) ?? Documents.DesignAlias(name);

    public Stored<Channel>? Channel(string key) => Documents.Channel(key);

    public IReadOnlyList<Stored<Channel>> Channels => Documents.Channels;

    /// <summary>The prices listed for a design, by channel.</summary>
    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku) => Documents.ListedPrices(sku);

}

/// <summary>All documents of one position, and the moment for which an answer is given.</summary>
public sealed class WholeCatalogue(IWholeDocuments documents, DateTimeOffset moment) : Catalogue(documents, moment)
{
    /// <summary>The position of the newest revision that they know.</summary>
    public long Position => documents.Position;

    /// <summary>The same before these changes.</summary>
    public WholeCatalogue Before(IEnumerable<Change> changes, long position) => new(documents.Before(changes, position), At);
}

/// <summary>
/// Where computations get the documents from: the present ones from memory, those of another moment from the store; only what the caller's key
/// sees. This is the one place that hands documents to computations.
/// </summary>
public sealed class CatalogueReader(Store store, PresentDocuments present, TimeProvider clock, ProfileAccess access)
{
    /// <summary>The keeper for who asks.</summary>
    public static ValueTask<CatalogueReader?> BindAsync(HttpContext context)
    {
        var everything = context.RequestServices.GetRequiredService<CatalogueReader>();
        var access = Caller.Of(context).Access;
        return ValueTask.FromResult<CatalogueReader?>(access.IsWhole ? everything : everything.SeenBy(access));
    }

    /// <summary>Asks the documents of now, or of a moment.</summary>
    public T Read<T>(DateTimeOffset? asOf, Func<Catalogue, T> read) => asOf is { } moment
        ? ReadAsOf(moment, read)
        : read(new Catalogue(access.Of(present.Now), clock.GetUtcNow()));

    /// <summary>All documents of now or of a moment, for an answer that takes its time: it holds nothing open.</summary>
    public WholeCatalogue Whole(DateTimeOffset? asOf) => asOf is { } moment
        ? new WholeCatalogue(access.Of(store.Read(snapshot => DocumentsInMemory.Empty.With(snapshot.All(Moment.Of(moment)), snapshot.PositionAt(Moment.Of(moment))))), moment)
        : new WholeCatalogue(access.Of(present.Now), clock.GetUtcNow());

    /// <summary>All documents as a write sees them, what others have committed meanwhile included.</summary>
    public WholeCatalogue Within(Writing writing) => new(access.Of(present.At(writing)), writing.Now);

    private T ReadAsOf<T>(DateTimeOffset moment, Func<Catalogue, T> read) =>
        store.Read(snapshot => read(new Catalogue(access.Of(new DocumentsOfSnapshot(snapshot, Moment.Of(moment))), moment)));

    private CatalogueReader SeenBy(ProfileAccess other) => new(store, present, clock, other);
}

/// <summary>The present documents, in memory, brought up to date when the store has moved on.</summary>
public sealed class PresentDocuments(Store store)
{
    private readonly Lock _refreshing = new();
    private DocumentsInMemory _present = DocumentsInMemory.Empty;

    /// <summary>What was acknowledged before the call is in them.</summary>
    public IWholeDocuments Now
    {
        get
        {
            var present = Volatile.Read(ref _present);
            return present.Position >= store.Position ? present : Refreshed();
        }
    }

    /// <summary>Those that a transaction sees.</summary>
    public IWholeDocuments At(Snapshot snapshot)
    {
        var present = Volatile.Read(ref _present);
        return snapshot.Position == present.Position ? present : present.With(snapshot.NewestSince(present.Position), snapshot.Position);
    }

    /// <summary>Some of them as a write sees them, what it has already written included.</summary>
    public Catalogue Within(Writing writing, ProfileAccess access) =>
        new(access.Of(new DocumentsOfSnapshot(writing, asOf: null, Volatile.Read(ref _present))), writing.Now);

    private DocumentsInMemory Refreshed()
    {
        lock (_refreshing)
        {
            if (_present.Position < store.Position)
                Volatile.Write(ref _present, store.Read(snapshot => _present.With(snapshot.NewestSince(_present.Position), snapshot.Position)));
            return _present;
        }
    }
}
