using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PriceFloor.Storage;

namespace PriceFloor.Api.Http;

/// <summary>The keys that open the service. Kept only as SHA-256 hashes, compared in constant time.</summary>
public sealed class KeyRing(Store store, TimeProvider clock)
{
    private const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";

    private readonly Lock _lock = new();
    private IReadOnlyList<StoredKey>? _keys;

    /// <summary>The caller behind a key, or null where it is unknown or has expired.</summary>
    public Caller? Identify(string key)
    {
        var hash = HashOf(key);
        StoredKey? found = null;
        foreach (var stored in Keys())
            if (CryptographicOperations.FixedTimeEquals(stored.Hash, hash))
                found = stored;
        return found is null || found.ExpiresAt <= Moment.Of(clock.GetUtcNow()) ? null : new Caller(found.Name, ScopesOf(found));
    }

    /// <summary>Forgets what was read, after keys have changed.</summary>
    public void Refresh()
    {
        lock (_lock)
            _keys = null;
    }

    /// <summary>A new key: <c>pf_</c> and 40 random letters and digits (238 bits).</summary>
    public static string NewKey() => "pf_" + RandomNumberGenerator.GetString(Letters, 40);

    public static StoredKey Stored(string name, string key, IEnumerable<Scope> scopes, DateTimeOffset created, DateTimeOffset? expires) =>
        new(name, HashOf(key), string.Join(' ', scopes.Distinct().Order().Select(Word)), Moment.Of(created), expires is { } at ? Moment.Of(at) : null);

    public static IReadOnlySet<Scope> ScopesOf(StoredKey key) =>
        key.Scopes.Split(' ').Select(word => Enum.GetValues<Scope>().First(scope => Word(scope) == word)).ToHashSet();

    public static string Word(Scope scope) => JsonNamingPolicy.KebabCaseLower.ConvertName(scope.ToString());

    // Read inside the lock, so that a list from before a change is never kept after it.
    private IReadOnlyList<StoredKey> Keys()
    {
        lock (_lock)
            return _keys ??= store.Read(snapshot => snapshot.Keys);
    }

    private static byte[] HashOf(string key) => SHA256.HashData(Encoding.UTF8.GetBytes(key));
}
