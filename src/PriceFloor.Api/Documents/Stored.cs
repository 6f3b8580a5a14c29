using System.Globalization;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>A document with the key and revision it was read from; its text is parsed when first needed.</summary>
public sealed class Stored<T> where T : class
{
    private readonly Lazy<T> _document;
    private string? _basis;

    private Stored(string key, long? revision, Lazy<T> document) => (Key, Revision, _document) = (key, revision, document);

    public string Key { get; }

    /// <summary>Null for a document that came with the request.</summary>
    public long? Revision { get; }

    /// <summary>The document. Throws <see cref="DamagedDocumentException"/> if the stored text is damaged.</summary>
    public T Document => _document.Value;

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

    public static Stored<T> Of(Revision revision) =>
        new(revision.Key, revision.Number, new Lazy<T>(() => StoredText<T>.Of(revision), LazyThreadSafetyMode.PublicationOnly));

    /// <summary>A document that was taken from the text of a revision.</summary>
    public static Stored<T> Read(Revision revision, T document) => new(revision.Key, revision.Number, new Lazy<T>(document));

    /// <summary>The same document, of the same revision, with other content: what it would be after changes that nobody stores.</summary>
    public Stored<T> With(T document) => new(Key, Revision, new Lazy<T>(document));

    /// <summary>A document of that key that nobody has stored.</summary>
    public static Stored<T> Unsaved(string key, T document) => new(key, null, new Lazy<T>(document));

    public static Stored<T> Inline(T document) => new("inline", null, new Lazy<T>(document));
}
