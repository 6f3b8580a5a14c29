using PriceFloor.Api.Access;
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
        return present.Position >= store.Position ? new(new WholeCatalogue(present, access, clock.GetUtcNow())) : RefreshedNow(access);
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
        : read(await WholeAsOf(access, moment));

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
        var (known, position) = (Volatile.Read(ref _present), await writing.Position);
        return new WholeCatalogue(
            position == known.Position ? known : known.With(await writing.NewestSince(known.Position), position), access, writing.Now);
    }

    public void Dispose() => _refreshing.Dispose();

    private Catalogue Of(DocumentsOfSnapshot documents, ProfileAccess access, DateTimeOffset moment) =>
        new(documents, _present.Book.Apart(), access, moment);

    private async ValueTask<WholeCatalogue> RefreshedNow(ProfileAccess access)
    {
        await _refreshing.WaitAsync();
        try
        {
            var before = _present;
            if (before.Position < store.Position)
                Volatile.Write(ref _present, await store.ReadAsync(async snapshot =>
                    before.With(await snapshot.NewestSince(before.Position), await snapshot.Position)));
            return new WholeCatalogue(_present, access, clock.GetUtcNow());
        }
        finally
        {
            _refreshing.Release();
        }
    }
}
