using System.Collections.Concurrent;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>
/// A kind of stored document: how it is completed and checked against other stored documents. What all kinds share (revisions, preconditions, pages)
/// is in <see cref="DocumentRoutes"/>.
/// </summary>
public abstract class DocumentKind<T>(string name, IValidator<T> validator) where T : class
{
    private const int MostSound = 100_000;

    private readonly ConcurrentDictionary<long, int> _sound = new();

    /// <summary>Its name in the store and in problems: "profile", "design", "channel", "price".</summary>
    public string Name { get; } = name;

    public IValidator<T> Validator { get; } = validator;

    /// <summary>
    /// Fills in what the document leaves to the store, and reports what prevents storing it: an unknown reference, or something that others still
    /// use. A document can refer only to what the caller sees. A damaged document can be replaced.
    /// </summary>
    public abstract ValueTask<Outcome<Checked<T>>> Check(Writing writing, string key, T document, Stored<T>? before, ProfileAccess access);

    /// <summary>Why a document may not be replaced: others still use what it would take away. Asked within the write.</summary>
    public virtual ValueTask<RequestFault?> AgainstNarrowing(Writing writing, string key, T document, Stored<T> before) => new((RequestFault?)null);

    /// <summary>What else is deleted with the document.</summary>
    public virtual ValueTask Cascade(Writing writing, string key) => ValueTask.CompletedTask;

    /// <summary>Why a stored document may not be deleted, apart from what refers to it; null if it may.</summary>
    public virtual RequestFault? AgainstDeleting(Revision stored) => null;

    /// <summary>The document's own text in a stored text that can be read.</summary>
    public virtual string DocumentIn(string body) => body;

    /// <summary>What is wrong with a stored text of this kind; null if it can be read.</summary>
    public virtual string? FaultIn(string body) => StoredText<T>.Read(body).Fault;

    /// <summary>
    /// A revision as answers have it, and whether its number says all of it: false if the same revision is shown differently on another day, so no
    /// caller may be told that it has it already.
    /// </summary>
    public virtual ValueTask<(Revision Revision, bool IsSettled)> Shown(Snapshot snapshot, Revision revision, DateTimeOffset? asOf) =>
        new((revision, true));

    /// <summary>Whether a stored text has the content of a document that is to be stored.</summary>
    protected virtual bool IsSame(string stored, string body) => stored == body;

    /// <summary>The read-only properties that name the document in answers.</summary>
    public virtual IEnumerable<(string Property, string Value)> NamesOf(string key) => [("key", key)];

    /// <summary>
    /// The same revision, checked: only a valid document may go out. A text that was read once is known by its hash and is not read again. Throws
    /// <see cref="DamagedDocumentException"/>.
    /// </summary>
    public Revision Sound(Revision revision)
    {
        if (revision.Body is not { } body
                || (_sound.TryGetValue(revision.Position, out var hash) && hash == body.GetHashCode(StringComparison.Ordinal)))
            return revision;
        if (FaultIn(body) is not null)
            throw new DamagedDocumentException(revision.Kind, revision.Key, revision.Number);
        if (_sound.Count >= MostSound)
            _sound.Clear();
        _sound[revision.Position] = body.GetHashCode(StringComparison.Ordinal);
        return revision;
    }

    /// <summary>Stores the document, or does nothing if the store already has the same.</summary>
    public async ValueTask<Outcome<Saved>> Save(Writing writing, string key, T document, ProfileAccess access) =>
        await access.Against(writing, Name, key) is { } hidden
            ? hidden
            : await Save(writing, key, document, access, await writing.Find(Name, key));

    /// <summary>The same for a caller that has already checked whether the key may write the document, and what it is now.</summary>
    /// <param name="writing">The write.</param>
    /// <param name="key">The key of the document.</param>
    /// <param name="document">The document.</param>
    /// <param name="access">What the caller sees.</param>
    /// <param name="before">What it is now.</param>
    /// <param name="mayNarrow">True if the caller asks for <see cref="AgainstNarrowing"/> itself, when everything else is written.</param>
    public async ValueTask<Outcome<Saved>> Save(Writing writing, string key, T document, ProfileAccess access, Revision? before,
        bool mayNarrow = false)
    {
        var stored = before is null ? null : Stored<T>.Of(before);
        var check = await Check(writing, key, document, stored, access);
        if (check.Found is not { } ready)
            return check.Faults.ToList();
        if (!mayNarrow && stored is not null && await AgainstNarrowing(writing, key, ready.Document, stored) is { } narrowed)
            return narrowed;

        var body = WireJson.WriteDocument(ready.Document, ready.Currency);
        return new Saved(
            before?.Body is { } same && IsSame(same, body) ? before : await writing.Save(Name, key, body, ready.References), before);
    }
}

/// <summary>A document ready to be stored.</summary>
/// <param name="Document">The document with everything filled in.</param>
/// <param name="Currency">Its money has at least the decimals of this currency.</param>
/// <param name="References">What it refers to.</param>
public sealed record Checked<T>(T Document, Currency Currency, IReadOnlyList<DocumentName> References) where T : class;

/// <summary>The result of storing a document.</summary>
/// <param name="Revision">The document as it is now.</param>
/// <param name="Before">As it was before; null if it is new.</param>
public sealed record Saved(Revision Revision, Revision? Before);
