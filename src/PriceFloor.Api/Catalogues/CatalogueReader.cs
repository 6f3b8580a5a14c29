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
    public T Read<T>(DateTimeOffset? asOf, Func<Catalogue, T> read) =>
        asOf is { } moment ? source.ReadAsOf(access, moment, read) : read(source.Now(access));

    /// <summary>All documents of now or of a moment, for an answer that takes long: nothing stays open.</summary>
    public WholeCatalogue Whole(DateTimeOffset? asOf) => asOf is { } moment ? source.WholeAsOf(access, moment) : source.Now(access);

    /// <summary>The documents as a write sees them, including what it has already written; each is read when it is asked for.</summary>
    public Catalogue Within(Writing writing) => source.Within(writing, access);

    /// <summary>All documents as a write sees them.</summary>
    public WholeCatalogue WholeWithin(Writing writing) => source.WholeWithin(writing, access);
}
