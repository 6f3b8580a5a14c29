using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>Reads the documents that a caller's key sees: the present ones, those of another moment, or as a write sees them.</summary>
public sealed class CatalogueReader(CatalogueSource source, ProfileAccess access)
{
    /// <summary>The reader for the caller of a request.</summary>
    public static ValueTask<CatalogueReader?> BindAsync(HttpContext context) =>
        ValueTask.FromResult<CatalogueReader?>(context.RequestServices.GetRequiredService<CatalogueSource>().SeenBy(Caller.Of(context).Access));

    /// <summary>Asks the documents of now, or of a moment.</summary>
    public ValueTask<T> Read<T>(DateTimeOffset? asOf, Func<Catalogue, T> read) =>
        asOf is { } moment ? source.ReadAsOf(access, moment, read) : Read(source.Now(access), read);

    /// <summary>The same for a question that needs no design but one, so of an earlier moment no other is read where each question waits.</summary>
    public ValueTask<T> ReadDesign<T>(string sku, DateTimeOffset? asOf, Func<Catalogue, T> read) =>
        asOf is { } moment ? source.ReadDesignAsOf(sku, access, moment, read) : Read(source.Now(access), read);

    /// <summary>All documents of now or of a moment, for an answer that takes long: nothing stays open.</summary>
    public ValueTask<WholeCatalogue> Whole(DateTimeOffset? asOf) => asOf is { } moment ? source.WholeAsOf(access, moment) : source.Now(access);

    /// <summary>These documents as a write sees them, including what it has already written.</summary>
    public ValueTask<Catalogue> Within(Writing writing, IEnumerable<DocumentName> names) => source.Within(writing, access, names);

    /// <summary>All documents as a write sees them.</summary>
    public ValueTask<WholeCatalogue> WholeWithin(Writing writing) => source.WholeWithin(writing, access);

    private static ValueTask<T> Read<T>(ValueTask<WholeCatalogue> now, Func<Catalogue, T> read) =>
        now.IsCompletedSuccessfully ? new(read(now.Result)) : ReadLater(now, read);

    private static async ValueTask<T> ReadLater<T>(ValueTask<WholeCatalogue> now, Func<Catalogue, T> read) => read(await now);
}
