namespace PriceFloor.Storage;

/// <summary>
/// Erases within a transaction that writes: every revision of a document, its head, its references, the lines of the log that name it; or all lines
/// of a source. Whoever keeps the transaction sees to it that the engine leaves no trace.
/// </summary>
internal static class Erasing
{
    /// <summary>Erases a document, and returns the number of erased revisions; null if there never was one.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="document">The document.</param>
    /// <param name="kindsBelow">Documents of these kinds are erased with it if they have its key, or one that begins with it and a slash.</param>
    /// <param name="mayStand">Whether it is also erased if it was not deleted before.</param>
    public static async ValueTask<int?> Document(Session session, DocumentName document, IReadOnlyList<string> kindsBelow, bool mayStand)
    {
        var (kind, key) = document;
        var snapshot = new Snapshot(session);
        if (await snapshot.Newest(kind, key) is not { } newest)
            return null;
        if (!newest.IsDeletion && !mayStand)
            throw new StoreException(
                $"The {kind} \"{key}\" is still there. Delete it first (DELETE over HTTP, which also reports what still uses it), then forget it.");
        if (await snapshot.UsersOf(kind, key) is { Count: > 0 } users)
            throw new StoreException($"The {kind} \"{key}\" is still used by {string.Join(", ", users.Select(user => $"{user.Kind} {user.Key}"))}. "
                + "Change or delete those first.");
        foreach (var below in kindsBelow)
            if (await snapshot.List(below, key + "/", limit: 1) is [var standing])
                throw new StoreException($"The {standing.Kind} \"{standing.Key}\" is still there. Delete it first, then forget the {kind}.");

        const string Below = "(kind IN @kindsBelow AND (key = @key OR substr(key, 1, length(@below)) = @below))";
        const string Those = $"((kind = @kind AND key = @key) OR {Below})";
        var all = new { kind, key, kindsBelow, below = key + "/" };
        await session.Execute("DELETE FROM reference WHERE from_kind = @kind AND from_key = @key", new { kind, key });
        await session.Execute($"DELETE FROM head WHERE {Those}", all);
        var gone = await session.Execute($"DELETE FROM revision WHERE {Those}", all);
        await Lines(session, kind, key);
        return gone;
    }

    /// <summary>
    /// Erases every line that a source has ever sent to the log, with its name, and returns their number; null if there never was one.
    /// </summary>
    public static async ValueTask<int?> Source(Session session, string source)
    {
        if (await session.ExecuteScalar<long?>("SELECT id FROM name WHERE kind = @kind AND key = @source", new { kind = LogNames.Source, source })
                is not { } id)
            return null;
        var gone = await session.Execute("DELETE FROM movement WHERE source = @id", new { id })
            + await session.Execute("DELETE FROM bench WHERE source = @id", new { id });
        await session.Execute("DELETE FROM log_source WHERE source = @id", new { id });
        await UnusedNames(session);
        return gone;
    }

    /// <summary>Why nothing was erased.</summary>
    public static string NeverWas(DocumentName document) =>
        $"There never was a {document.Kind} \"{document.Key}\" in this store (case counts), or it is already forgotten";

    /// <summary>Why nothing was erased.</summary>
    public static string NeverSent(string source) =>
        $"The source \"{source}\" never sent a line to the log of this store (case counts), or it is already forgotten";

    /// <summary>Begins another life and records what was done, without a name, which would be a trace.</summary>
    public static async ValueTask Finish(Session session, string kind, long given, DateTimeOffset now)
    {
        await StoreEpoch.BeginAnother(session, given);
        await Trail.Tell(session, (Trail.CommandLine, kind, "", Trail.Forgotten), await Trail.TimeOf(session, now));
    }

    /// <summary>A line says nothing without its design or the channel where it moved.</summary>
    private static async ValueTask Lines(Session session, string kind, string key)
    {
        const string Those = "(SELECT id FROM name WHERE kind = @kind AND key = @key)";
        if (kind == LogNames.Design)
        {
            await session.Execute($"DELETE FROM movement WHERE design IN {Those}", new { kind, key });
            await session.Execute($"DELETE FROM bench WHERE design IN {Those}", new { kind, key });
        }
        else if (kind == LogNames.Channel)
        {
            await session.Execute($"DELETE FROM movement WHERE place IN {Those}", new { kind, key });
        }

        await UnusedNames(session);
    }

    private static async ValueTask UnusedNames(Session session) => await session.Execute(
        """
        DELETE FROM name WHERE id NOT IN (SELECT source FROM movement UNION SELECT source FROM bench UNION SELECT source FROM log_source
            UNION SELECT design FROM movement UNION SELECT design FROM bench WHERE design IS NOT NULL
            UNION SELECT place FROM movement WHERE place IS NOT NULL UNION SELECT currency FROM movement WHERE currency IS NOT NULL
            UNION SELECT stall FROM movement WHERE stall IS NOT NULL UNION SELECT piece FROM movement WHERE piece IS NOT NULL
            UNION SELECT step FROM bench WHERE step IS NOT NULL)
        """);
}
