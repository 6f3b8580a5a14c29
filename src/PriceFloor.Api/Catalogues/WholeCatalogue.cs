using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>All documents of one position, for an answer about many of them or about what changed.</summary>
public sealed class WholeCatalogue : Catalogue
{
    private readonly DocumentsInMemory _documents;
    private readonly ProfileAccess _access;
    private readonly DateTimeOffset _moment;

    internal WholeCatalogue(DocumentsInMemory documents, ProfileAccess access, DateTimeOffset moment)
        : base(documents, documents.Book, access, moment) =>
            (_documents, _access, _moment) = (documents, access, moment);

    /// <summary>The position of the newest revision in it.</summary>
    public long Position => _documents.Position;

    /// <summary>Where the store stood when they were so.</summary>
    public StorePoint Point => _documents.Point;

    /// <summary>The listed prices that clear pieces, of designs that the key sees or not.</summary>
    public IReadOnlyList<Stored<ListedPrice>> Clearing => _documents.Clearing;

    /// <summary>An answer about everything that the key sees, made once for these documents and this day.</summary>
    /// <param name="question">The question; equal questions have one answer.</param>
    /// <param name="answer">Makes the answer.</param>
    public ValueTask<T> Kept<T>(object question, Func<Task<T>> answer) where T : class => _documents.Lists.Get((_access, Today, question), answer);

    /// <summary>The same before these changes.</summary>
    public WholeCatalogue Before(IEnumerable<Change> changes, long position) => new(_documents.Before(changes, position), _access, _moment);

    /// <summary>The same after these revisions, each the newest of its document.</summary>
    public WholeCatalogue After(IReadOnlyList<Revision> revisions, long position, DateTimeOffset moment) =>
        new(_documents.With(revisions, position), _access, moment);

    /// <summary>The same with other content in some documents, which nobody stores.</summary>
    public WholeCatalogue Changed(IReadOnlyDictionary<DocumentName, object> documents) => new(_documents.Changed(documents), _access, _moment);

    /// <summary>Documents of a time for which no catalogue is kept.</summary>
    public static WholeCatalogue Of(IReadOnlyList<Revision> revisions, ProfileAccess access, DateTimeOffset moment) =>
        new(DocumentsInMemory.Empty.With(revisions, 0), access, moment);
}
