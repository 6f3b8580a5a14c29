using System.Security.Cryptography;

namespace PriceFloor.Storage;

/// <summary>
/// A life of the store: the time in which its positions and revision numbers only rise. A restored backup, an older file that
/// was put in place by hand, and a store in which a document was forgotten continue from an earlier state, so they begin another. Its name
/// identifies old cursors, and no revision has a number that a lost one may have had, so an old ETag cannot match anything else.
/// </summary>
internal static class StoreEpoch
{
    /// <summary>The gap in numbers if nobody knows which were given: the store that a backup replaces is broken or gone.</summary>
    public const long Leap = 1000;

    private const int NameBytes = 6;

    /// <summary>Begins another life. Its numbers are above all that are in the store and above <paramref name="given"/>.</summary>
    public static async ValueTask BeginAnother(Session session, long given)
    {
        var above = long.Max(given, await HighestNumber(session));
        var name = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(NameBytes));
        await session.Execute("UPDATE life SET name = @name, numbers_above = @above", new { name, above });
    }

    /// <summary>No revision of this store, or of one that it replaced, has a higher number; 0 if there never was any.</summary>
    public static async ValueTask<long> HighestNumber(Session session) =>
        long.Max(await HighestStored(session), await session.ExecuteScalar<long>("SELECT numbers_above FROM life"));

    /// <summary>No revision that is in this store has a higher number; 0 if there is none.</summary>
    public static ValueTask<long> HighestStored(Session session) =>
        session.ExecuteScalar<long>("SELECT coalesce(max(number), 0) FROM revision");
}
