using System.Globalization;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>A document with the key and revision it was read from; its text is parsed when first asked for.</summary>
public sealed class Stored<T> where T : class
{
    private readonly Lazy<T> _document;
    private string? _basis;

    private Stored(string key, long? revision, Lazy<T> document) => (Key, Revision, _document) = (key, revision, document);

    public string Key { get; }

    /// <summary>Null for a document that came with the request.</summary>
    public long? Revision { get; }

    public T Document => _document.Value;

    /// <summary>How an answer names what it rests on: <c>main@7</c>, or <c>inline</c>.</summary>
    public string Basis => _basis ??= Revision is { } number ? string.Create(CultureInfo.InvariantCulture, $"{Key}@{number}") : "inline";

    public static Stored<T> Of(Revision revision) => new(revision.Key, revision.Number, new Lazy<T>(() => WireJson.ReadDocument<T>(revision.Body!), LazyThreadSafetyMode.PublicationOnly));

    public static Stored<T> Inline(T document) => new("inline", null, new Lazy<T>(document));
}
