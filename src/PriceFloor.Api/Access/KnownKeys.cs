using System.Buffers.Binary;
using System.Collections.Frozen;
using System.Security.Cryptography;
using PriceFloor.Storage;

namespace PriceFloor.Api.Access;

/// <summary>The keys as they were read, kept only as SHA-256 hashes and compared in constant time. A change of a key makes another object.</summary>
public sealed class KnownKeys
{
    private const char OfStudio = '/';

    private readonly FrozenDictionary<ulong, KnownKey[]> _known;

    private readonly ILookup<string, StoredKey> _byStudio;

    internal KnownKeys(IReadOnlyList<StoredKey> keys, KeyUses uses)
    {
        Stored = keys;
        _known = keys.SelectMany(key => SecretsOf(key, uses))
            .GroupBy(known => BeginningOf(known.Hash)).ToFrozenDictionary(same => same.Key, same => same.ToArray());
        _byStudio = keys.Where(key => key.Name.Contains(OfStudio)).ToLookup(key => key.Name[..key.Name.IndexOf(OfStudio)]);
    }

    /// <summary>All of them, as they are stored.</summary>
    internal IReadOnlyList<StoredKey> Stored { get; }

    /// <summary>The keys of a studio, as its host knows them.</summary>
    public IReadOnlyList<StoredKey> Of(string studio) => [.. _byStudio[studio]];

    /// <summary>True if another studio, or the host, has a key with that hash.</summary>
    public bool IsElsewhere(byte[] hash, string studio) => Find(hash) is { } known && known.Caller.Studio != studio;

    /// <summary>The caller behind a key at a time, or null if the key is unknown or has expired.</summary>
    public Caller? Identify(ReadOnlySpan<char> key, DateTimeOffset now) => StillGood(Find(key), now);

    /// <summary>
    /// The same for a header with a key. A connection that sends the header again sends the same string object, which the web server keeps for it,
    /// so the key is not hashed again until a key changes.
    /// </summary>
    /// <param name="header">The header.</param>
    /// <param name="key">The key in it.</param>
    /// <param name="ofConnection">What is kept for the connection while it is open; null if nothing can be kept.</param>
    /// <param name="now">The time.</param>
    public Caller? Identify(string header, ReadOnlySpan<char> key, IDictionary<object, object?>? ofConnection, DateTimeOffset now)
    {
        if (ofConnection is null)
            return Identify(key, now);
        if (ofConnection.TryGetValue(typeof(KnownKeys), out var kept) && kept is Recognised known && ReferenceEquals(known.Header, header)
                && ReferenceEquals(known.Keys, this))
            return StillGood(known.Key, now);
        var found = Find(key);
        if (found is not null)
            ofConnection[typeof(KnownKeys)] = new Recognised(header, this, found);
        return StillGood(found, now);
    }

    /// <summary>Whether a secret is of one of these keys.</summary>
    public bool Have(ReadOnlySpan<byte> hash) => Find(hash) is not null;

    private KnownKey? Find(ReadOnlySpan<char> key)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        KeyRing.Hash(key, hash); // an unknown or a mistyped key; only a refusal says which
        return Find(hash);
    }

    private KnownKey? Find(ReadOnlySpan<byte> hash)
    {
        KnownKey? found = null;
        if (_known.TryGetValue(BeginningOf(hash), out var some)) // nobody can choose what a SHA-256 begins with
            foreach (var one in some)
                if (CryptographicOperations.FixedTimeEquals(one.Hash, hash))
                    found = one;
        return found;
    }

    private static ulong BeginningOf(ReadOnlySpan<byte> hash) => BinaryPrimitives.ReadUInt64LittleEndian(hash);

    private static Caller? StillGood(KnownKey? found, DateTimeOffset time)
    {
        var now = Moment.Of(time);
        if (found is null || found.Until <= now)
            return null;
        found.Use.Now(now);
        return found.Caller;
    }

    /// <summary>The secret of a key, and the one before its rotation, which expires by itself.</summary>
    private static IEnumerable<KnownKey> SecretsOf(StoredKey key, KeyUses uses)
    {
        var use = uses.Of(key.Name);
        use.Stored(key.LastUsed ?? 0);
        var ofStudio = key.Name.Split(OfStudio, 2); // STUDIO/NAME if the service has many
        var caller = new Caller(ofStudio[^1], KeyRing.ScopesOf(key))
        {
            Studio = ofStudio.Length > 1 ? ofStudio[0] : null,
            Secret = key.Hash,
            Access = key.Profiles is { } profiles ? ProfileAccess.Of(profiles.Split(' ')) : ProfileAccess.All,
        };
        yield return new KnownKey(key.Hash, key.ExpiresAt, caller, use);
        if (key is { PreviousHash: { } previous, PreviousUntil: { } until })
            yield return new KnownKey(previous, key.ExpiresAt < until ? key.ExpiresAt : until, caller with { Secret = previous }, use);
    }

    private sealed record KnownKey(byte[] Hash, long? Until, Caller Caller, KeyUse Use);

    private sealed record Recognised(string Header, KnownKeys Keys, KnownKey Key);
}
