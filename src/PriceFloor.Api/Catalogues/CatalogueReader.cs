using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// The one place from which computations get documents. It keeps the present ones in memory; those of another moment are read from the store.
/// Nothing of it is seen without saying for whose key.
/// </summary>
public sealed class CatalogueSource(Store store, TimeProvider clock)
{
    private readonly Lock _refreshing = new();
    private DocumentsInMemory _present = DocumentsInMemory.Empty;
    private CatalogueReader? _whole;

    /// <summary>What a key sees.</summary>
    public CatalogueReader SeenBy(ProfileAccess access) =>
        access.IsWhole ? _whole ??= new CatalogueReader(this, access) : new CatalogueReader(this, access);

    /// <summary>Now, with all that was acknowledged before the call.</summary>
    internal WholeCatalogue Now(ProfileAccess access) => new(Present, access, clock.GetUtcNow());

    /// <summary>All documents as they were at a moment.</summary>
    internal WholeCatalogue WholeAsOf(ProfileAccess access, DateTimeOffset moment) =>
        new(store.Read(snapshot => DocumentsInMemory.Empty.With(snapshot.All(Moment.Of(moment)), snapshot.PositionAt(Moment.Of(moment)))), access,
            moment);

    /// <summary>The few documents that a question needs, as they were at a moment.</summary>
    internal T ReadAsOf<T>(ProfileAccess access, DateTimeOffset moment, Func<Catalogue, T> read) =>
        store.Read(snapshot => read(Of(snapshot, Moment.Of(moment), access, moment)));

    /// <summary>The few documents that a write needs, what it has already written included.</summary>
    internal Catalogue Within(Writing writing, ProfileAccess access) => Of(writing, asOf: null, access, writing.Now);

    /// <summary>All documents as a write sees them.</summary>
    internal WholeCatalogue WholeWithin(Writing writing, ProfileAccess access)
    {
        var known = Volatile.Read(ref _present);
        return new WholeCatalogue(
            writing.Position == known.Position ? known : known.With(writing.NewestSince(known.Position), writing.Position), access, writing.Now);
    }

    private DocumentsInMemory Present
    {
        get
        {
            var present = Volatile.Read(ref _present);
            return present.Position >= store.Position ? present : Refreshed();
        }
    }

    private Catalogue Of(Snapshot snapshot, long? asOf, ProfileAccess access, DateTimeOffset moment)
    {
        var known = Volatile.Read(ref _present);
        return new Catalogue(new DocumentsOfSnapshot(snapshot, asOf, known), known.Book.Apart(), access, moment);
    }

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

/// <summary>Reads the documents that a caller's key sees: those of now, of another moment, or as a write sees them.</summary>
public sealed class CatalogueReader(CatalogueSource source, ProfileAccess access)
{
    /// <summary>The reader for the caller of a request.</summary>
    public static ValueTask<CatalogueReader?> BindAsync(HttpContext context) =>
        ValueTask.FromResult<CatalogueReader?>(context.RequestServices.GetRequiredService<CatalogueSource>().SeenBy(Caller.Of(context).Access));

    /// <summary>Asks the documents of now, or of a moment.</summary>
    public T Read<T>(DateTimeOffset? asOf, Func<Catalogue, T> read) =>
        asOf is { } moment ? source.ReadAsOf(access, moment, read) : read(source.Now(access));

    /// <summary>All documents of now or of a moment, for an answer that takes its time: it holds nothing open.</summary>
    public WholeCatalogue Whole(DateTimeOffset? asOf) => asOf is { } moment ? source.WholeAsOf(access, moment) : source.Now(access);

    /// <summary>The documents as a write sees them, what it has already written included; each is read when it is asked for.</summary>
    public Catalogue Within(Writing writing) => source.Within(writing, access);

    /// <summary>All documents as a write sees them.</summary>
    public WholeCatalogue WholeWithin(Writing writing) => source.WholeWithin(writing, access);
}
