using PriceFloor.Storage;

namespace PriceFloor.Api.Access;

/// <summary>Writes of a caller. A body may take its time to come in: whether the key still opens is asked once more where it is written.</summary>
public static class KeyedWrites
{
    /// <summary>Throws <see cref="KeyEndedException"/> where the key does not open any more; nothing is written then.</summary>
    public static Task<T> WriteAsync<T>(this Store store, Caller caller, Func<Writing, T> write) =>
        store.WriteAsync(caller.Name, writing => StillOpens(writing, caller) ? write(writing) : throw new KeyEndedException());

    private static bool StillOpens(Writing writing, Caller caller) => writing.Opens(caller.Secret);
}

/// <summary>A key was deleted, rotated away or has expired since its request began.</summary>
public sealed class KeyEndedException() : Exception("The key was deleted, rotated or has expired while the request came in; nothing was stored.");
