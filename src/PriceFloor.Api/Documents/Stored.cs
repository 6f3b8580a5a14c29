using System.Globalization;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>A document with the key and revision it was read from; its text is parsed when first needed.</summary>
public sealed class Stored<T> where T : class
{
    private Revision? _unread;
    private T? _document;
    private string? _basis;

    private Stored(string key, long? revision, T document) => (Key, Revision, _document) = (key, revision, document);

    private Stored(Revision unread) => (Key, Revision, _unread) = (unread.Key, unread.Number, unread);

    public string Key { get; }

    /// <summary>Null for a document that came with the request.</summary>
    public long? Revision { get; }

    /// <summary>The document. Throws <see cref="DamagedDocumentException"/> if the stored text is damaged.</summary>
    public T Document => Volatile.Read(ref _document) ?? Parsed();

    /// <summary>The document, or null if the stored text is damaged: for an answer about many documents, which leaves that one out.</summary>
    public T? Sound
    {
        get
        {
            try
            {
                return Document;
            }
            catch (DamagedDocumentException)
            {
                return null;
            }
        }
    }

    /// <summary>How an answer names a document that it rests on: <c>main@7</c>, or <c>inline</c>.</summary>
    public string Basis => _basis ??= Revision is { } number ? string.Create(CultureInfo.InvariantCulture, $"{Key}@{number}") : "inline";

    public static Stored<T> Of(Revision revision) => new(revision);

    /// <summary>A document that was taken from the text of a revision.</summary>
    public static Stored<T> Read(Revision revision, T document) => new(revision.Key, revision.Number, document);

    /// <summary>The same document, of the same revision, with other content: what it would be after changes that nobody stores.</summary>
    public Stored<T> With(T document) => new(Key, Revision, document);

    /// <summary>A document of that key that nobody has stored.</summary>
    public static Stored<T> Unsaved(string key, T document) => new(key, null, document);

    public static Stored<T> Inline(T document) => new("inline", null, document);

    /// <summary>Several threads may parse it at once; the first to finish is right for all. A fault is not kept.</summary>
    private T Parsed()
    {
        if (Volatile.Read(ref _unread) is not { } revision)
            return _document!;
        var document = StoredText<T>.Of(revision);
        document = Interlocked.CompareExchange(ref _document, document, null) ?? document;
        Volatile.Write(ref _unread, null); // only once there is a document
        return document;
    }
}
