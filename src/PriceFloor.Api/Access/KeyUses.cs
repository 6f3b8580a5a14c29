using System.Collections.Concurrent;

namespace PriceFloor.Api.Access;

/// <summary>
/// When each key was last used, to the minute. Kept in memory, so no request writes; <see cref="AccessKeys.KeyUseWriter"/> writes the changes
/// from time to time.
/// </summary>
/// <param name="all">Where the uses are kept; null: here.</param>
/// <param name="studio">The studio whose keys these are, among those of all.</param>
public sealed class KeyUses(KeyUses? all = null, string studio = "")
{
    public const long Minute = 60_000_000;

    private readonly ConcurrentDictionary<string, KeyUse> _uses = new();

    /// <summary>The use of a key: the same object as long as the key exists.</summary>
    public KeyUse Of(string name) => all is null ? _uses.GetOrAdd(name, _ => new KeyUse()) : all.Of($"{studio}/{name}");

    /// <summary>A key is gone, and another may get its name.</summary>
    public void Forget(string name)
    {
        if (all is null)
            _uses.TryRemove(name, out _);
        else
            all.Forget($"{studio}/{name}");
    }

    /// <summary>Changes that are not written yet.</summary>
    public IReadOnlyList<(string Name, long At)> Unwritten => [.. _uses.Where(use => use.Value.IsUnwritten).Select(use => (use.Key, use.Value.At))];

    public void Written(string name, long at) => Of(name).WrittenAt = at;
}

/// <summary>The minute in which a key was last used, in microseconds since 1970 UTC; 0 before the first use since the start.</summary>
public sealed class KeyUse
{
    private long _at;

    public long At => Volatile.Read(ref _at);

    public long WrittenAt { get; set; }

    public bool IsUnwritten => At > WrittenAt;

    /// <summary>What is stored of it counts until it is used again.</summary>
    public void Stored(long at)
    {
        if (Interlocked.CompareExchange(ref _at, at, 0) == 0)
            WrittenAt = at;
    }

    /// <summary>Writes to memory once a minute, and only reads otherwise.</summary>
    public void Now(long moment)
    {
        var minute = moment - moment % KeyUses.Minute;
        if (Volatile.Read(ref _at) != minute)
            Volatile.Write(ref _at, minute);
    }
}
