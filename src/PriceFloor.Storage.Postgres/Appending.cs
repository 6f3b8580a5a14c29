namespace PriceFloor.Storage.Postgres;

/// <summary>Revisions, heads and references as four statements at most, however many they are.</summary>
internal static class Appending
{
    private const string Revisions =
        """
        INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body)
        SELECT * FROM unnest($1::bigint[], $2::text[], $3::text[], $4::bigint[], $5::bigint[], $6::text[], $7::text[])
        """;

    private const string MovedHeads =
        """
        INSERT INTO head (kind, key, position, deleted) SELECT * FROM unnest($1::text[], $2::text[], $3::bigint[], $4::bigint[])
        ON CONFLICT (studio, kind, key) DO UPDATE SET position = excluded.position, deleted = excluded.deleted
        """;

    private const string GoneReferences =
        """
        DELETE FROM reference USING unnest($1::text[], $2::text[]) AS changed (kind, key) WHERE from_kind = changed.kind AND from_key = changed.key
        """;

    private const string References =
        """
        INSERT INTO reference (from_kind, from_key, to_kind, to_key) SELECT * FROM unnest($1::text[], $2::text[], $3::text[], $4::text[])
        """;

    public static IReadOnlyList<(string Sql, object[] Values)> Of(IReadOnlyList<Held> held)
    {
        var revisions = held.Select(one => one.Revision).ToList();
        var last = held.GroupBy(one => one.Document).Select(same => same.Last()).ToList(); // a document may have been written twice
        var heads = last.ConvertAll(one => one.Revision);
        var statements = new List<(string, object[])>
        {
            (Revisions,
            [
                Each(revisions, one => one.Position), Each(revisions, one => one.Kind), Each(revisions, one => one.Key),
                Each(revisions, one => one.Number), Each(revisions, one => one.SavedAt), Each(revisions, one => one.SavedBy),
                Each(revisions, one => one.Body),
            ]),
            (MovedHeads,
            [
                Each(heads, one => one.Kind), Each(heads, one => one.Key), Each(heads, one => one.Position),
                Each(heads, one => one.IsDeletion ? 1L : 0L),
            ]),
        };
        var changing = held.Where(one => one.ChangesReferences).Select(one => one.Document).ToHashSet();
        if (changing.Count == 0)
            return statements;
        var changed = last.Where(one => changing.Contains(one.Document)).ToList();
        statements.Add((GoneReferences, [Each(changed, one => one.Document.Kind), Each(changed, one => one.Document.Key)]));
        var references = changed.SelectMany(one => one.References, (one, to) => (From: one.Document, To: to)).ToList();
        if (references.Count > 0)
            statements.Add((References,
            [
                Each(references, one => one.From.Kind), Each(references, one => one.From.Key), Each(references, one => one.To.Kind),
                Each(references, one => one.To.Key),
            ]));
        return statements;
    }

    private static TValue[] Each<T, TValue>(List<T> rows, Func<T, TValue> of) => [.. rows.Select(of)];
}
