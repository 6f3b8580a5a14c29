using PriceFloor.Api.Access;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// The keys of studios in the host's store, named STUDIO/NAME, so a request finds its studio by its key alone. Each studio's own store decides; what
/// differs here is brought up to it.
/// </summary>
public sealed class StudioKeys(Store host, KeyRing ring)
{
    private const string By = "studio keys";

    /// <summary>True if the host knew a key that the studio does not have, so a request may have come with it.</summary>
    public async Task<bool> Follow(string studio, Store store) => await Follow(studio, await store.ReadAsync(snapshot => snapshot.Keys));

    /// <summary>The same with keys that are at hand.</summary>
    /// <param name="studio">The studio.</param>
    /// <param name="stored">Its keys, as its own store has them.</param>
    public async Task<bool> Follow(string studio, IEnumerable<StoredKey> stored)
    {
        var known = await ring.Keys;
        var own = stored
            .Where(key => !known.IsElsewhere(key.Hash, studio)) // a copied store opens nothing
            .Select(key => key with { Name = $"{studio}/{key.Name}" }).ToList();
        if (Same(own, known.Of(studio)))
            return false;
        var hasEnded = await host.WriteAsync(By, async writing =>
        {
            var gone = Of(studio, await writing.Keys).Where(here => !own.Exists(key => IsSame(key, here))).ToList();
            foreach (var key in gone)
                await writing.DeleteKey(key.Name);
            var there = await writing.Keys;
            foreach (var key in own.Where(key => !there.Exists(here => IsSame(key, here) || here.Hash.AsSpan().SequenceEqual(key.Hash))))
                await Add(writing, key); // a hash that another studio took meanwhile stays its own
            return gone.Count > 0;
        });
        ring.Refresh();
        return hasEnded;
    }

    /// <summary>Deletes the keys of a studio that is forgotten.</summary>
    public static async ValueTask Forget(Writing writing, string studio)
    {
        foreach (var key in Of(studio, await writing.Keys))
            await writing.DeleteKey(key.Name);
    }

    private static async ValueTask Add(Writing writing, StoredKey key)
    {
        if (key is { PreviousHash: { } previous, PreviousUntil: { } until })
        {
            await writing.AddKey(key with { Hash = previous });
            await writing.RotateKey(key.Name, key.Hash, until);
        }
        else
        {
            await writing.AddKey(key);
        }

        if (key.LastUsed is { } used)
            await writing.KeyWasUsed(key.Name, used);
    }

    private static List<StoredKey> Of(string studio, IEnumerable<StoredKey> keys) =>
        [.. keys.Where(key => key.Name.StartsWith(studio + "/", StringComparison.Ordinal))];

    private static bool Same(List<StoredKey> own, IReadOnlyList<StoredKey> here) =>
        own.Count == here.Count && own.TrueForAll(key => here.Any(other => IsSame(key, other)));

    /// <summary>All but when it was last used, which is kept here.</summary>
    private static bool IsSame(StoredKey key, StoredKey other) =>
        (key.Name, key.Scopes, key.CreatedAt, key.ExpiresAt, key.Profiles, key.PreviousUntil)
            == (other.Name, other.Scopes, other.CreatedAt, other.ExpiresAt, other.Profiles, other.PreviousUntil)
        && key.Hash.AsSpan().SequenceEqual(other.Hash)
        && key.PreviousHash.AsSpan().SequenceEqual(other.PreviousHash);
}
