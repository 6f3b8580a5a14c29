using System.Globalization;
using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>Checks a whole store at one moment, without changing it; a service may be using it.</summary>
internal static class StoreCheck
{
    private const int MostFaults = 20;

    /// <param name="path">The store.</param>
    /// <param name="faultOf">The fault of a document of that kind and text; null if there is none.</param>
    /// <param name="checkedOf">Told how many revisions of how many are checked, for whoever watches.</param>
    public static StoreReport Of(string path, Func<string, string, string?> faultOf, Action<long, long>? checkedOf = null)
    {
        try
        {
            using var connection = StoreFile.Open(path);
            var schema = StoreFile.SchemaOf(connection, path);
            using var transaction = connection.Begin(deferred: true);
            if (StoreFile.Damage(connection) is { Count: > 0 } damage)
                return new StoreReport(schema, 0, 0, 0, damage); // the contents of a damaged file mean nothing
            var faults = ForeignKeys(connection).Concat(Heads(connection)).Concat(References(connection)).Concat(Times(connection))
                .Concat(LogCheck.Of(connection))
                .Concat(Documents(connection, Counted(connection, faultOf, checkedOf))).Take(MostFaults).ToList();
            return new StoreReport(schema,
                connection.ExecuteScalar<long>("SELECT count(*) FROM head WHERE deleted = 0"),
                connection.ExecuteScalar<long>("SELECT count(*) FROM revision"),
                connection.ExecuteScalar<long>("SELECT coalesce(max(position), 0) FROM revision"), faults);
        }
        catch (StoreTroubleException e)
        {
            throw StoreFaults.CannotOpen(path, e);
        }
    }

    private static Func<string, string, string?> Counted(SqliteConnection connection, Func<string, string, string?> faultOf,
        Action<long, long>? checkedOf)
    {
        if (checkedOf is null)
            return faultOf;
        var (done, all) = (0L, connection.ExecuteScalar<long>("SELECT count(*) FROM revision WHERE body IS NOT NULL"));
        return (kind, body) =>
        {
            checkedOf(++done, all);
            return faultOf(kind, body);
        };
    }

    private static IEnumerable<string> ForeignKeys(SqliteConnection connection) =>
        connection.Query<(string Table, long? RowId, string Parent)>("PRAGMA foreign_key_check")
            .Select(row => $"A row of {row.Table} names one of {row.Parent} that is not there.");

    private static IEnumerable<string> Heads(SqliteConnection connection) => connection.Query<string>(
        """
        WITH newest AS (SELECT r.kind, r.key, r.position, r.body IS NULL AS deleted FROM revision r
            WHERE r.number = (SELECT max(p.number) FROM revision p WHERE p.kind = r.kind AND p.key = r.key))
        SELECT n.kind || ' ' || n.key || ': its newest revision is not the one that is shown.' FROM newest n
            LEFT JOIN head h ON h.kind = n.kind AND h.key = n.key WHERE h.position IS NOT n.position OR h.deleted IS NOT n.deleted
        UNION ALL
        SELECT h.kind || ' ' || h.key || ': is shown, but has no revision.' FROM head h
            WHERE NOT EXISTS (SELECT 1 FROM revision r WHERE r.kind = h.kind AND r.key = h.key)
        """);

    private static IEnumerable<string> References(SqliteConnection connection) => connection.Query<string>(
        """
        SELECT f.from_kind || ' ' || f.from_key || ': is not there, yet refers to ' || f.to_kind || ' ' || f.to_key || '.' FROM reference f
            LEFT JOIN head h ON h.kind = f.from_kind AND h.key = f.from_key WHERE coalesce(h.deleted, 1) = 1
        """);

    private static IEnumerable<string> Times(SqliteConnection connection) => connection.Query<string>(
        """
        SELECT kind || ' ' || key || ': revision ' || number || ' has an earlier time than what was written before it.'
        FROM (SELECT kind, key, number, saved_at, lag(saved_at) OVER (ORDER BY position) AS before FROM revision) WHERE saved_at < before
        """);

    private static IEnumerable<string> Documents(SqliteConnection connection, Func<string, string, string?> faultOf) =>
        connection.Stream<(string Kind, string Key, long Number, string Body)>(
                "SELECT kind, key, number, body FROM revision WHERE body IS NOT NULL ORDER BY position")
            .Select(row => (row, fault: NotJson(row.Body) ?? faultOf(row.Kind, row.Body))).Where(found => found.fault is not null)
            .Select(found =>
                string.Create(CultureInfo.InvariantCulture, $"{found.row.Kind} {found.row.Key}, revision {found.row.Number}: {found.fault}"));

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
