using System.Collections.Immutable;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>Documents after changes. It is immutable; a document that no change names is not in it.</summary>
public sealed class ChangedDocuments
{
    public static readonly ChangedDocuments None = new(ImmutableDictionary<DocumentName, object>.Empty);

    private readonly ImmutableDictionary<DocumentName, object> _documents;

    private ChangedDocuments(ImmutableDictionary<DocumentName, object> documents) => _documents = documents;

    /// <summary>Each changed document.</summary>
    public IReadOnlyDictionary<DocumentName, object> All => _documents;

    /// <summary>A document after the changes; null if none names it.</summary>
    public T? Find<T>(string kind, string key) where T : class => (T?)_documents.GetValueOrDefault(new DocumentName(kind, key));

    internal object? Find(DocumentName name) => _documents.GetValueOrDefault(name);

    /// <summary>The same with other documents in the place of these.</summary>
    internal ChangedDocuments With(IEnumerable<KeyValuePair<DocumentName, object>> documents) => new(_documents.SetItems(documents));
}
