using System.Globalization;
using System.Text.Json;

namespace PriceFloor.Storage;

/// <summary>Checks what is stored, at one moment and without changing it, whatever the engine.</summary>
internal static class StoreChecking
{
    private const int MostFaults = 20, Together = 500;

    /// <param name="session">A transaction that reads.</param>
    /// <param name="schema">The schema of the store.</param>
    /// <param name="hasLog">Whether a store of this schema has a log.</param>
    /// <param name="engineFaults">What the engine's own checks have found.</param>
    /// <param name="watch">Gives the fault of a document of a kind and text, null if there is none; is told how many of how many are checked.</param>
    public static async ValueTask<StoreReport> Of(Session session, int schema, bool hasLog, IReadOnlyList<string> engineFaults,
        (Func<string, string, string?> FaultOf, Action<long, long>? CheckedOf) watch)
    {
        List<string> faults =
        [
            .. engineFaults, .. await Heads(session), .. await References(session), .. await Times(session),
            .. hasLog ? await LogCheck.Of(session) : [],
        ];
        if (faults.Count < MostFaults)
            faults.AddRange(await Documents(session, watch.FaultOf, watch.CheckedOf, MostFaults - faults.Count));
        return new StoreReport(schema,
            await session.ExecuteScalar<long>("SELECT count(*) FROM head WHERE deleted = 0"),
            await session.ExecuteScalar<long>("SELECT count(*) FROM revision"),
            await session.ExecuteScalar<long>("SELECT coalesce(max(position), 0) FROM revision"), [.. faults.Take(MostFaults)]);
    }

    private static ValueTask<List<string>> Heads(Session session) => session.Query<string>(
        """
        WITH newest AS (SELECT r.kind, r.key, r.position, CASE WHEN r.body IS NULL THEN 1 ELSE 0 END AS deleted FROM revision r
            WHERE r.number = (SELECT max(p.number) FROM revision p WHERE p.kind = r.kind AND p.key = r.key))
        SELECT n.kind || ' ' || n.key || ': its newest revision is not the one that is shown.' FROM newest n
            LEFT JOIN head h ON h.kind = n.kind AND h.key = n.key WHERE h.position IS DISTINCT FROM n.position OR h.deleted IS DISTINCT FROM n.deleted
        UNION ALL
        SELECT h.kind || ' ' || h.key || ': is shown, but has no revision.' FROM head h
            WHERE NOT EXISTS (SELECT 1 FROM revision r WHERE r.kind = h.kind AND r.key = h.key)
        """);

    private static ValueTask<List<string>> References(Session session) => session.Query<string>(
        """
        SELECT f.from_kind || ' ' || f.from_key || ': is not there, yet refers to ' || f.to_kind || ' ' || f.to_key || '.' FROM reference f
            LEFT JOIN head h ON h.kind = f.from_kind AND h.key = f.from_key WHERE coalesce(h.deleted, 1) = 1
        """);

    private static ValueTask<List<string>> Times(Session session) => session.Query<string>(
        """
        SELECT kind || ' ' || key || ': revision ' || number || ' has an earlier time than what was written before it.'
        FROM (SELECT kind, key, number, saved_at, lag(saved_at) OVER (ORDER BY position) AS earlier FROM revision) AS timed WHERE saved_at < earlier
        """);

    private static async ValueTask<List<string>> Documents(Session session, Func<string, string, string?> faultOf, Action<long, long>? checkedOf,
        int most)
    {
        var (faults, done, after) = (new List<string>(), 0L, 0L);
        var all = await session.ExecuteScalar<long>("SELECT count(*) FROM revision WHERE body IS NOT NULL");
        while (faults.Count < most)
        {
            var some = await session.Query<(long Position, string Kind, string Key, long Number, string Body)>(
                "SELECT position, kind, key, number, body FROM revision WHERE body IS NOT NULL AND position > @after ORDER BY position "
                + "LIMIT @Together",
                new { after, Together });
            if (some.Count == 0)
                break;
            foreach (var (_, kind, key, number, body) in some)
            {
                if ((NotJson(body) ?? faultOf(kind, body)) is { } fault)
                    faults.Add(string.Create(CultureInfo.InvariantCulture, $"{kind} {key}, revision {number}: {fault}"));
                checkedOf?.Invoke(++done, all);
            }

            after = some[^1].Position;
        }

        return faults;
    }

    private static string? NotJson(string body)
    {
        try
        {
            using var _ = JsonDocument.Parse(body);
            return null;
        }
        catch (JsonException)
        {
            return "is not JSON.";
        }
    }
}
