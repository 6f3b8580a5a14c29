using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// The one place from which computations get documents. It keeps the present ones in memory, and reads those of another moment from the store. It
/// shows nothing without saying for whose key.
/// </summary>
public sealed class CatalogueSource(Store store, TimeProvider clock)
{
    private readonly Lock _refreshing = new();
    private DocumentsInMemory _present = DocumentsInMemory.Empty;
    private CatalogueReader? _whole;

    /// <summary>What a key sees.</summary>
    public CatalogueReader SeenBy(ProfileAccess access) =>
        access.IsWhole ? _whole ??= new CatalogueReader(this, access) : new CatalogueReader(this, access);

    /// <summary>Now, with everything that was acknowledged before the call.</summary>
    internal WholeCatalogue Now(ProfileAccess access) => new(Present, access, clock.GetUtcNow());

    /// <summary>All documents as they were at a moment.</summary>
    internal WholeCatalogue WholeAsOf(ProfileAccess access, DateTimeOffset moment) =>
        new(store.Read(snapshot => DocumentsInMemory.Empty.With(snapshot.All(Moment.Of(moment)), snapshot.PositionAt(Moment.Of(moment)))), access,
            moment);

    /// <summary>The few documents that a question needs, as they were at a moment.</summary>
    internal T ReadAsOf<T>(ProfileAccess access, DateTimeOffset moment, Func<Catalogue, T> read) =>
        store.Read(snapshot => read(Of(snapshot, Moment.Of(moment), access, moment)));

    /// <summary>The few documents that a write needs, including what it has already written.</summary>
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
