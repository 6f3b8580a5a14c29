using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PriceFloor.Storage;

namespace PriceFloor.Api.Access;

/// <summary>The keys of the service: read when they are first needed, and again after one has changed.</summary>
/// <param name="store">The store with the keys.</param>
/// <param name="uses">When they were used.</param>
/// <param name="tell">Told when a key has changed, before the change is acknowledged; null: nobody else knows the keys.</param>
public sealed class KeyRing(Store store, KeyUses uses, Func<Task>? tell = null)
{
    private readonly Lock _lock = new();
    private Read? _read;
    private long _changes;

    /// <summary>The keys as they are; nearly always at hand.</summary>
    public ValueTask<KnownKeys> Keys =>
        Volatile.Read(ref _read) is { } read && read.At.HoldsKeysOf(store.Point) ? new(read.Keys) : ReadAsync();

    /// <summary>The keys as they were read last, which may have changed since; null if they must be read.</summary>
    public KnownKeys? LastRead => Volatile.Read(ref _read)?.Keys;

    /// <summary>Drops the keys that were read, after keys have changed.</summary>
    public void Refresh()
    {
        lock (_lock)
        {
            _changes++;
            Volatile.Write(ref _read, null);
        }
    }

    /// <summary>The same, complete when everybody who knows the keys knows the change.</summary>
    public Task RefreshAsync()
    {
        Refresh();
        return tell?.Invoke() ?? Task.CompletedTask;
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

    public static byte[] HashOf(string key)
    {
        var hash = new byte[SHA256.HashSizeInBytes];
        Hash(key, hash);
        return hash;
    }

    internal static void Hash(ReadOnlySpan<char> key, Span<byte> hash)
    {
        const int Usual = 256;
        var utf8 = key.Length <= Usual ? stackalloc byte[Usual * 3] : new byte[Encoding.UTF8.GetByteCount(key)];
        SHA256.HashData(utf8[..Encoding.UTF8.GetBytes(key, utf8)], hash);
    }

    /// <summary>A list that was read while a key changed is read again, so one from before a change is never kept after it.</summary>
    private async ValueTask<KnownKeys> ReadAsync()
    {
        while (true)
        {
            var changes = Interlocked.Read(ref _changes);
            var read = await store.ReadAsync(async snapshot => new Read(new KnownKeys(await snapshot.Keys, uses), await snapshot.Point()));
            lock (_lock)
                if (_changes == changes)
                {
                    Volatile.Write(ref _read, read);
                    return read.Keys;
                }
        }
    }

    /// <summary>The keys, and where the store stood in the same transaction.</summary>
    private sealed record Read(KnownKeys Keys, StorePoint At);
}
