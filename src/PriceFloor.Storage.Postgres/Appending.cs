namespace PriceFloor.Storage.Postgres;

/// <summary>
/// Revisions, heads and references as four statements at most, however many they are. A statement for one row, as most writes have it, is planned
/// once; one for many rows is planned each time, since its plan depends on how many they are.
/// </summary>
internal static class Appending
{
    private const string Conflict =
        " ON CONFLICT (studio, kind, key) DO UPDATE SET position = excluded.position, deleted = excluded.deleted";

    /// <summary>A lone revision and its head.</summary>
    private const string Document =
        """
        WITH appended AS (INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body) VALUES ($1, $2, $3, $4, $5, $6, $7))
        INSERT INTO head (kind, key, position, deleted) VALUES ($2, $3, $1, $8)
        """ + Conflict;

    private const string Revisions =
        """
        INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body)
        SELECT * FROM unnest($1::bigint[], $2::text[], $3::text[], $4::bigint[], $5::bigint[], $6::text[], $7::text[])
        """;

    private const string Heads =
        "INSERT INTO head (kind, key, position, deleted) SELECT * FROM unnest($1::text[], $2::text[], $3::bigint[], $4::bigint[])" + Conflict;

    private static readonly ForOneOrMany s_goneReferences = new(
        "DELETE FROM reference WHERE from_kind = $1 AND from_key = $2 AND to_kind = $3 AND to_key = $4",
        """
        DELETE FROM reference r USING unnest($1::text[], $2::text[], $3::text[], $4::text[]) AS gone (from_kind, from_key, to_kind, to_key)
        WHERE r.from_kind = gone.from_kind AND r.from_key = gone.from_key AND r.to_kind = gone.to_kind AND r.to_key = gone.to_key
        """);

    private static readonly ForOneOrMany s_references = new(
        "INSERT INTO reference (from_kind, from_key, to_kind, to_key) VALUES ($1, $2, $3, $4)",
        "INSERT INTO reference (from_kind, from_key, to_kind, to_key) SELECT * FROM unnest($1::text[], $2::text[], $3::text[], $4::text[])");

    public static IReadOnlyList<(string Sql, object?[] Values)> Of(IReadOnlyList<Held> held)
    {
        var documents = held.GroupBy(one => one.Document).Select(same => (First: same.First(), Last: same.Last())).ToList(); // some twice
        List<(string, object?[])> statements = held is [var lone] ? [One(lone.Revision)]
            : [All(held.Select(one => one.Revision).ToList()), Moved(documents.ConvertAll(one => one.Last.Revision))];
        var gone = documents.SelectMany(one => one.First.Before.Except(one.Last.References), (one, to) => (one.Last.Document, to)).ToList();
        if (gone.Count > 0)
            statements.Add(Of(s_goneReferences, gone));
        var added = documents.SelectMany(one => one.Last.References.Except(one.First.Before), (one, to) => (one.Last.Document, to)).ToList();
        if (added.Count > 0)
            statements.Add(Of(s_references, added));
        return statements;
    }

    private static (string Sql, object?[] Values) One(Revision one) =>
        (Document, [one.Position, one.Kind, one.Key, one.Number, one.SavedAt, one.SavedBy, one.Body, Deleted(one)]);

    private static (string Sql, object?[] Values) All(List<Revision> rows) => (Revisions,
    [
        Each(rows, one => one.Position), Each(rows, one => one.Kind), Each(rows, one => one.Key), Each(rows, one => one.Number),
        Each(rows, one => one.SavedAt), Each(rows, one => one.SavedBy), Each(rows, one => one.Body),
    ]);

    private static (string Sql, object?[] Values) Moved(List<Revision> newest) => (Heads,
    [
        Each(newest, one => one.Kind), Each(newest, one => one.Key), Each(newest, one => one.Position), Each(newest, Deleted),
    ]);

    private static long Deleted(Revision one) => one.IsDeletion ? 1 : 0;

    private static (string Sql, object?[] Values) Of(ForOneOrMany statement, List<(DocumentName From, DocumentName To)> references) => statement.Of(
        Each(references, one => one.From.Kind), Each(references, one => one.From.Key), Each(references, one => one.To.Kind),
        Each(references, one => one.To.Key));

    private static TValue[] Each<T, TValue>(List<T> rows, Func<T, TValue> of) => [.. rows.Select(of)];

    private sealed record ForOneOrMany(string One, string Many)
    {
        /// <param name="columns">The values of each column, one for each row.</param>
        public (string Sql, object?[] Values) Of(params Array[] columns) =>
            columns[0].Length == 1 ? (One, [.. columns.Select(column => column.GetValue(0))]) : (Many, columns);
    }
}
