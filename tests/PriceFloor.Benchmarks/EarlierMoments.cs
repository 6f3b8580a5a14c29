using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// What was at an earlier moment, among millions of revisions: in a file that has them all of one studio, and in a database where one studio has
/// 5,000 of them and others have the rest. Each question is about another moment.
/// </summary>
public static class EarlierMoments
{
    private const int Port = 5491, Designs = 200, OfAStudio = 5000, Warming = 30, Questions = 200;

    /// <summary>
    /// A microsecond between revisions, so that they are not in the future. Nothing is kept to undo it, and the index is made once all is there.
    /// </summary>
    private const string InAFile =
        """
        PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA cache_size = -400000; PRAGMA temp_store = MEMORY; PRAGMA threads = 2;
        CREATE TEMP TABLE top AS SELECT max(position) AS position, max(saved_at) AS saved_at FROM revision;
        CREATE TEMP TABLE drawn AS SELECT h.key, r.number, r.body, row_number() OVER (ORDER BY h.key) AS place
            FROM head h JOIN revision r ON r.position = h.position WHERE h.kind = 'design';
        DROP INDEX revision_at;
        INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body)
            WITH RECURSIVE round (n) AS (VALUES (0) UNION ALL SELECT n + 1 FROM round WHERE n < ROUNDS - 1)
            SELECT top.position + n * DESIGNS + place, 'design', key, number + n + 1, top.saved_at + n * DESIGNS + place, 'filled', body
            FROM round CROSS JOIN top CROSS JOIN drawn;
        CREATE INDEX revision_at ON revision (kind, key, saved_at, number);
        UPDATE head SET position = (SELECT r.position FROM revision r WHERE r.kind = head.kind AND r.key = head.key ORDER BY number DESC LIMIT 1)
            WHERE kind = 'design';
        PRAGMA journal_mode = WAL;
        SELECT saved_at FROM top;
        SELECT max(saved_at) FROM revision;
        """;

    /// <summary>
    /// Every round is one revision of each design of each studio, so the rows of a studio are far apart. The table is emptied in the transaction that
    /// fills it, so nothing of it is logged (<see cref="WithoutALog"/>); what is sorted is made once all is there.
    /// </summary>
    private const string InADatabase =
        """
        SET session_replication_role = replica;
        SET maintenance_work_mem = '1GB';
        BEGIN;
        INSERT INTO studio (key) SELECT 'studio-' || n FROM generate_series(2, STUDIOS) n;
        CREATE TEMP TABLE drawn AS SELECT h.key, r.number, r.body, row_number() OVER (ORDER BY h.key) AS place
            FROM head h JOIN revision r ON r.studio = h.studio AND r.position = h.position WHERE h.kind = 'design';
        CREATE TEMP TABLE top AS SELECT max(position) AS position, max(saved_at) AS saved_at FROM revision;
        CREATE TEMP TABLE was AS SELECT * FROM revision;
        CREATE TEMP TABLE undo AS
            SELECT 2 AS place, format('ALTER TABLE %s DROP CONSTRAINT %I', conrelid::regclass, conname) AS first,
                format('ALTER TABLE %s ADD CONSTRAINT %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid)) AS later
                FROM pg_constraint WHERE conrelid = 'revision'::regclass AND contype IN ('p', 'u')
            UNION ALL SELECT 1, format('ALTER TABLE %s DROP CONSTRAINT %I', conrelid::regclass, conname),
                format('ALTER TABLE %s ADD CONSTRAINT %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid))
                FROM pg_constraint WHERE confrelid = 'revision'::regclass
            UNION ALL SELECT 3, format('DROP INDEX %s', indexrelid::regclass), pg_get_indexdef(indexrelid) FROM pg_index
                WHERE indrelid = 'revision'::regclass AND NOT EXISTS (SELECT FROM pg_constraint WHERE conindid = indexrelid);
        DO $$ DECLARE one record; BEGIN
            FOR one IN SELECT first FROM undo ORDER BY place LOOP EXECUTE one.first; END LOOP;
        END $$;
        TRUNCATE revision;
        INSERT INTO revision SELECT * FROM was;
        DO $$ BEGIN FOR n IN 0..ROUNDS - 1 LOOP
            INSERT INTO revision (studio, position, kind, key, number, saved_at, saved_by, body)
            SELECT s.id, top.position + n * DESIGNS + place, 'design', d.key, number + n + 1, top.saved_at + n * DESIGNS + place, 'filled', body
            FROM studio s CROSS JOIN drawn d CROSS JOIN top;
        END LOOP; END $$;
        INSERT INTO head (studio, kind, key, position, deleted)
            SELECT s.id, 'design', d.key, top.position + (ROUNDS - 1) * DESIGNS + place, 0 FROM studio s CROSS JOIN drawn d CROSS JOIN top
            ON CONFLICT (studio, kind, key) DO UPDATE SET position = excluded.position;
        DO $$ DECLARE one record; BEGIN
            FOR one IN SELECT later FROM undo ORDER BY place DESC LOOP EXECUTE one.later; END LOOP;
        END $$;
        COMMIT;
        SELECT saved_at FROM top;
        SELECT saved_at + ROUNDS * DESIGNS FROM top;
        VACUUM ANALYZE;
        CHECKPOINT;
        """;

    private const string WithoutALog = "-c wal_level=minimal -c max_wal_senders=0";

    private static readonly (string Name, string Path, string Wanted)[] s_questions =
    [
        ("the floor of a design", "/v1/designs/D-117/floor-price?asOf=", "at most 5 ms"),
        ("a design", "/v1/designs/D-117?asOf=", "at most 5 ms"),
        ("the list of 200 designs", "/v1/designs?limit=200&asOf=", ""),
        ("the price list of 200 designs", "/v1/price-list?asOf=", ""),
    ];

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, Numbers.Of(args, 10_000_000)[0]));

    public static async Task MeasureAsync(Figures figures, int revisions)
    {
        var published = await Published.Folder;
        await OfAFileAsync(figures, published, revisions);
        await using var server = await PostgresServer.StartAsync(WithoutALog);
        if (server is not null)
            await OfADatabaseAsync(figures, published, server, revisions);
    }

    private static async Task OfAFileAsync(Figures figures, string published, int revisions)
    {
        using var data = new TemporaryFolder();
        await using (var studio = await BenchStudio.StartAsync(published, Port, data.Path))
        {
            await studio.ArrangeAsync(Designs);
            await studio.StopAsync();
        }

        try
        {
            var clock = Stopwatch.StartNew();
            var said = await PostgresServer.AskedAsync(Process.Start(PostgresServer.Piped("sqlite3", "-bail", data.File("pricefloor.db")))!,
                Filled(InAFile, revisions / Designs, studios: 1));
            Tell("a file", revisions, clock);
            await using var studio = await BenchStudio.StartAsync(published, Port, data.Path);
            await AskAsync(figures, studio, "in a file", revisions, Moments(said));
        }
        catch (Win32Exception)
        {
            Console.WriteLine("skipped: no sqlite3 to fill a file with revisions");
        }
    }

    private static async Task OfADatabaseAsync(Figures figures, string published, PostgresServer server, int revisions)
    {
        var store = await server.MakeAsync("filled");
        using var data = new TemporaryFolder();
        await using (var studio = await BenchStudio.StartAsync(published, Port, data.Path, store: store))
        {
            await studio.ArrangeAsync(Designs);
            await studio.StopAsync();
        }

        var clock = Stopwatch.StartNew();
        var said = await server.RunAsync("filled", Filled(InADatabase, OfAStudio / Designs, studios: int.Max(2, revisions / OfAStudio)));
        Tell("the database", revisions, clock);
        await using var again = await BenchStudio.StartAsync(published, Port, data.Path, store: store);
        await AskAsync(figures, again, "on PostgreSQL", revisions, Moments(said));
    }

    private static async Task AskAsync(Figures figures, BenchStudio studio, string where, int revisions, (long From, long To) moments)
    {
        var random = new Random(1);
        foreach (var (name, path, wanted) in s_questions)
        {
            var times = new List<double>();
            for (var n = 0; n < Warming + Questions; n++)
            {
                var moment = DateTimeOffset.UnixEpoch.AddTicks(random.NextInt64(moments.From, moments.To) * TimeSpan.TicksPerMicrosecond);
                var clock = Stopwatch.StartNew();
                await studio.SendAsync(HttpMethod.Get, path + moment.ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture));
                if (n >= Warming)
                    times.Add(clock.Elapsed.TotalMilliseconds);
            }

            var what = string.Create(CultureInfo.InvariantCulture, $"{name} as of a moment, {revisions:#,0} revisions {where}");
            figures.Add(what, " ms", Figures.Median(times), wanted);
            figures.Add($"{what}, p99", " ms", times.Order().ElementAt((int)(times.Count * 0.99)));
        }
    }

    private static void Tell(string what, int revisions, Stopwatch clock) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"Filling {what} with {revisions:#,0} revisions took {clock.Elapsed.TotalSeconds:0} s."));

    private static string Filled(string script, int rounds, int studios) => script
        .Replace("ROUNDS", rounds.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
        .Replace("DESIGNS", Designs.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
        .Replace("STUDIOS", studios.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    private static (long From, long To) Moments(string said)
    {
        var lines = said.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return (long.Parse(lines[^2], CultureInfo.InvariantCulture), long.Parse(lines[^1], CultureInfo.InvariantCulture));
    }
}
