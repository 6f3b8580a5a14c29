using PriceFloor.Storage;

namespace PriceFloor.Api.Access;

/// <summary>Writes of a caller. A body may take long to arrive, so the key is checked again when the write is made.</summary>
public static class KeyedWrites
{
    /// <summary>Throws <see cref="KeyEndedException"/> if the key is no longer valid; then nothing is written.</summary>
    public static Task<T> WriteAsync<T>(this Store store, Caller caller, Func<Writing, ValueTask<T>> write) =>
        store.WriteAsync(caller.Name, async writing => await writing.Opens(caller.Secret) ? await write(writing) : throw new KeyEndedException());

    /// <summary>The same for lines of the log: the key is checked in each of their transactions.</summary>
    public static Task<LogAppended> AppendAsync<T>(this Store store, Caller caller, LogAppend<T> append) where T : LogLine =>
        store.AppendAsync(caller.Name, append, async writing =>
        {
            if (!await writing.Opens(caller.Secret))
                throw new KeyEndedException();
        });
}

/// <summary>A key was deleted, rotated away or expired after its request began.</summary>
public sealed class KeyEndedException() : Exception("The key was deleted, rotated or has expired while the request came in; nothing was stored.");
