using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// The one place from which computations get documents. It keeps the present ones in memory, and reads those of another moment from the store. It
/// shows nothing without saying for whose key.
/// </summary>
public sealed class CatalogueSource(Store store, TimeProvider clock) : IDisposable
{
    private readonly SemaphoreSlim _refreshing = new(1, 1);
    private DocumentsInMemory _present = DocumentsInMemory.Empty;
    private CatalogueReader? _whole;

    /// <summary>What a key sees.</summary>
    public CatalogueReader SeenBy(ProfileAccess access) =>
        access.IsWhole ? _whole ??= new CatalogueReader(this, access) : new CatalogueReader(this, access);

    /// <summary>Now, with everything that was acknowledged before the call: nearly always at hand.</summary>
    internal ValueTask<WholeCatalogue> Now(ProfileAccess access)
    {
        var present = Volatile.Read(ref _present);
        return present.Point.Holds(store.Point) ? new(new WholeCatalogue(present, access, clock.GetUtcNow())) : RefreshedNow(access);
    }

    /// <summary>All documents as they were at a moment.</summary>
    internal ValueTask<WholeCatalogue> WholeAsOf(ProfileAccess access, DateTimeOffset moment) => store.ReadAsync(async snapshot =>
    {
        var (then, position) = (await snapshot.All(Moment.Of(moment)), await snapshot.PositionAt(Moment.Of(moment)));
        return new WholeCatalogue(DocumentsInMemory.Empty.With(then, position), access, moment);
    });

    /// <summary>
    /// The documents that a question needs, as they were at a moment: each read when it is asked for, or all of them together if every question to
    /// the store waits for a network.
    /// </summary>
    internal async ValueTask<T> ReadAsOf<T>(ProfileAccess access, DateTimeOffset moment, Func<Catalogue, T> read) => store.AnswersAtOnce
        ? await store.ReadAsync(snapshot =>
            new ValueTask<T>(read(Of(new DocumentsOfSnapshot(snapshot, Moment.Of(moment), _present), access, moment))))
        : read(WholeCatalogue.Of(await store.ReadAsync(snapshot => snapshot.All(Moment.Of(moment))), access, moment));

    /// <summary>The same with one design: its own document and its listed prices, all profiles and all channels.</summary>
    internal async ValueTask<T> ReadDesignAsOf<T>(string sku, ProfileAccess access, DateTimeOffset moment, Func<Catalogue, T> read)
    {
        if (store.AnswersAtOnce)
            return await ReadAsOf(access, moment, read);
        var asOf = Moment.Of(moment);
        return read(WholeCatalogue.Of(await store.ReadAsync(async snapshot => (List<Revision>)
        [
            .. new[] { await snapshot.Find(Kinds.Design, sku, asOf) }.OfType<Revision>(),
            .. await snapshot.List(Kinds.ListedPrice, ListedPriceKey.Beginning(sku), asOf: asOf),
            .. await snapshot.List(Kinds.Profile, asOf: asOf),
            .. await snapshot.List(Kinds.Channel, asOf: asOf),
        ]), access, moment));
    }

    /// <summary>These documents as a write sees them, including what it has already written.</summary>
    internal async ValueTask<Catalogue> Within(Writing writing, ProfileAccess access, IEnumerable<DocumentName> names)
    {
        var documents = new DocumentsOfSnapshot(writing, asOf: null, _present);
        foreach (var name in names)
            await documents.Bring(name);
        return Of(documents, access, writing.Now);
    }

    /// <summary>All documents as a write sees them.</summary>
    internal async ValueTask<WholeCatalogue> WholeWithin(Writing writing, ProfileAccess access)
    {
        var point = await writing.Point();
        var known = Known(point);
        return new WholeCatalogue(
            known.Point.IsAt(point) ? known : known.With(await writing.NewestSince(known.Position), point), access, writing.Now);
    }

    public void Dispose() => _refreshing.Dispose();

    private Catalogue Of(DocumentsOfSnapshot documents, ProfileAccess access, DateTimeOffset moment) =>
        new(documents, _present.Book.Apart(), access, moment);

    /// <summary>What is known on the way to a point: nothing, if it is of another history.</summary>
    private DocumentsInMemory Known(StorePoint point) =>
        Volatile.Read(ref _present) is var known && point.Holds(known.Point) ? known : DocumentsInMemory.Empty;

    private async ValueTask<WholeCatalogue> RefreshedNow(ProfileAccess access)
    {
        await _refreshing.WaitAsync();
        try
        {
            if (!_present.Point.Holds(store.Point))
                Volatile.Write(ref _present, await store.ReadAsync(async snapshot =>
                {
                    var point = await snapshot.Point();
                    var known = Known(point);
                    return known.With(await snapshot.NewestSince(known.Position), point);
                }));
            return new WholeCatalogue(_present, access, clock.GetUtcNow());
        }
        finally
        {
            _refreshing.Release();
        }
    }
}
