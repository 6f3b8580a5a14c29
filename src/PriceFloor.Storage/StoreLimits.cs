namespace PriceFloor.Storage;

/// <summary>How much a store may hold; null: as much as there is room for.</summary>
/// <param name="Documents">Documents that are not deleted.</param>
/// <param name="Bytes">Bytes of the store on the disk, at which it takes no further document or line of the log.</param>
/// <param name="Keys">Access keys.</param>
public sealed record StoreLimits(long? Documents = null, long? Bytes = null, long? Keys = null)
{
    public static readonly StoreLimits None = new();

    /// <summary>Throws a <see cref="QuotaException"/> if a write has made more documents, or has written to a store that is full.</summary>
    internal async ValueTask Check(Writing writing, Func<ValueTask<long>> bytes)
    {
        if (writing.LastPosition == 0)
            return; // it stored no document
        await CheckBytes(bytes);
        if (Documents is { } most && await writing.Documents is var there && there > most)
            throw new QuotaException("documents", most, there - 1);
    }

    /// <summary>The same for everything that was put in at once.</summary>
    internal async ValueTask CheckAll(Snapshot snapshot, Func<ValueTask<long>> bytes)
    {
        await CheckBytes(bytes);
        if (Documents is { } most && await snapshot.Documents is var there && there > most)
            throw new QuotaException("documents", most, there);
        if (Keys is { } keys && (await snapshot.Keys).Count is var have && have > keys)
            throw new QuotaException("keys", keys, have);
    }

    /// <summary>The same of its size, which is asked only if it is limited.</summary>
    internal async ValueTask CheckBytes(Func<ValueTask<long>> bytes)
    {
        if (Bytes is { } most && await bytes() is var there && there >= most)
            throw new QuotaException("bytes", most, there);
    }

    /// <summary>The same before a key is added.</summary>
    public async ValueTask CheckKeys(Snapshot snapshot)
    {
        if (Keys is { } most && (await snapshot.Keys).Count is var there && there >= most)
            throw new QuotaException("keys", most, there);
    }
}

/// <summary>A store has reached a limit, so nothing was written.</summary>
public sealed class QuotaException(string what, long limit, long used) : Exception($"The limit of {what} is reached.")
{
    /// <summary>documents, bytes or keys.</summary>
    public string What => what;

    public long Limit => limit;

    /// <summary>How much there is without the write that was refused.</summary>
    public long Used => used;
}
