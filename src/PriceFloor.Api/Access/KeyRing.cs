using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PriceFloor.Storage;

namespace PriceFloor.Api.Access;

/// <summary>The keys of the service, kept only as SHA-256 hashes and compared in constant time.</summary>
public sealed class KeyRing(Store store, KeyUses uses, TimeProvider clock)
{
    private readonly Lock _lock = new();
    private KnownKey[]? _keys;

    /// <summary>The caller behind a key, or null if the key is unknown or has expired.</summary>
    public Caller? Identify(ReadOnlySpan<char> key) => StillGood(Find(key, Keys()));

    /// <summary>
    /// The same for a header with a key. A connection that sends the header again sends the same string object, which the web server keeps for it,
    /// so the key is not hashed again until a key changes.
    /// </summary>
    /// <param name="header">The header.</param>
    /// <param name="key">The key in it.</param>
    /// <param name="ofConnection">What is kept for the connection while it is open; null if nothing can be kept.</param>
    public Caller? Identify(string header, ReadOnlySpan<char> key, IDictionary<object, object?>? ofConnection)
    {
        if (ofConnection is null)
            return Identify(key);
        var keys = Keys();
        if (ofConnection.TryGetValue(this, out var kept) && kept is Recognised known && ReferenceEquals(known.Header, header)
                && ReferenceEquals(known.Keys, keys))
            return StillGood(known.Key);
        var found = Find(key, keys);
        if (found is not null)
            ofConnection[this] = new Recognised(header, keys, found);
        return StillGood(found);
    }

    private static KnownKey? Find(ReadOnlySpan<char> key, KnownKey[] keys)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        Hash(key, hash); // an unknown or a mistyped key; only a refusal says which
        KnownKey? found = null;
        foreach (var stored in keys)
            if (CryptographicOperations.FixedTimeEquals(stored.Hash, hash))
                found = stored;
        return found;
    }

    private Caller? StillGood(KnownKey? found)
    {
        var now = Moment.Of(clock.GetUtcNow());
        if (found is null || found.Until <= now)
            return null;
        found.Use.Now(now);
        return found.Caller;
    }

    /// <summary>Drops the keys that were read, after keys have changed.</summary>
    public void Refresh()
    {
        lock (_lock)
            Volatile.Write(ref _keys, null);
    }

    /// <summary>A stored key; with profiles, it is limited to them.</summary>
    public static StoredKey Stored(string name, string key, IEnumerable<Scope> scopes, DateTimeOffset created, DateTimeOffset? expires,
        IEnumerable<string>? profiles = null) =>
            new(name, HashOf(key), string.Join(' ', scopes.Distinct().Order().Select(NameOf)), Moment.Of(created),
                expires is { } at ? Moment.Of(at) : null,
                profiles is null ? null : string.Join(' ', profiles.Distinct().Order(StringComparer.Ordinal)));

    public static IReadOnlySet<Scope> ScopesOf(StoredKey key) =>
        key.Scopes.Split(' ').Select(word => Enum.GetValues<Scope>().First(scope => NameOf(scope) == word)).ToHashSet();

    public static string NameOf(Scope scope) => JsonNamingPolicy.KebabCaseLower.ConvertName(scope.ToString());

    // Read inside the lock, so a list from before a change is never kept after it.
    private KnownKey[] Keys()
    {
        if (Volatile.Read(ref _keys) is { } known)
            return known;
        lock (_lock)
            return _keys ??= [.. store.Read(snapshot => snapshot.Keys).SelectMany(SecretsOf)];
    }

    /// <summary>The secret of a key, and the one before its rotation, which expires by itself.</summary>
    private IEnumerable<KnownKey> SecretsOf(StoredKey key)
    {
        var caller = new Caller(key.Name, ScopesOf(key))
        {
            Secret = key.Hash,
            Access = key.Profiles is { } profiles ? ProfileAccess.Of(profiles.Split(' ')) : ProfileAccess.All,
        };
        yield return new KnownKey(key.Hash, key.ExpiresAt, caller, uses.Of(key.Name));
        if (key is { PreviousHash: { } previous, PreviousUntil: { } until })
            yield return new KnownKey(previous, key.ExpiresAt < until ? key.ExpiresAt : until, caller with { Secret = previous }, uses.Of(key.Name));
    }

    private sealed record KnownKey(byte[] Hash, long? Until, Caller Caller, KeyUse Use);

    private sealed record Recognised(string Header, KnownKey[] Keys, KnownKey Key);

    public static byte[] HashOf(string key)
    {
        var hash = new byte[SHA256.HashSizeInBytes];
        Hash(key, hash);
        return hash;
    }

    private static void Hash(ReadOnlySpan<char> key, Span<byte> hash)
    {
        const int Usual = 256;
        var utf8 = key.Length <= Usual ? stackalloc byte[Usual * 3] : new byte[Encoding.UTF8.GetByteCount(key)];
        SHA256.HashData(utf8[..Encoding.UTF8.GetBytes(key, utf8)], hash);
    }
}
