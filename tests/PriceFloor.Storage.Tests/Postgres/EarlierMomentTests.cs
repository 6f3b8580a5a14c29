using Microsoft.Extensions.Time.Testing;
using PriceFloor.Storage.Postgres;
using Xunit;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>What a question about an earlier moment reads: a row for each document, however long the histories are.</summary>
public sealed class EarlierMomentTests : IDisposable
{
    private const int Documents = 20, Rounds = 100;

    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly string _database;

    public EarlierMomentTests() => _database = _cluster.NewDatabase();

    public void Dispose() => _cluster.Drop(_database);

    [Fact]
    public async Task A_question_about_a_moment_reads_a_row_of_each_document_and_no_whole_table()
    {
        using var store = Opened();
        long half = 0;
        for (var round = 0; round < Rounds; round++)
        {
            _clock.Advance(TimeSpan.FromSeconds(1));
            var body = $"{round}";
            await store.WriteAsync("test", async writing =>
            {
                for (var document = 0; document < Documents; document++)
                    await writing.Save("design", $"D-{document:00}", body, []);
                return true;
            });
            half = round == Rounds / 2 ? Moment.Of(_clock.GetUtcNow()) : half;
        }

        _cluster.Run(_database, "postgres", "ANALYZE"); // as the server does by itself after so many rows
        Assert.Equal(Documents, await RowsReadBy(async snapshot =>
        {
            var then = await snapshot.All(half);
            Assert.Equal(Enumerable.Repeat($"{Rounds / 2}", Documents), then.Select(revision => revision.Body));
        }));
        Assert.Equal(Documents, await RowsReadBy(async snapshot => Assert.Equal(Documents, (await snapshot.List("design", asOf: half)).Count)));
        Assert.InRange(await RowsReadBy(async snapshot => Assert.Equal((Rounds / 2 + 1) * Documents, await snapshot.PositionAt(half))), 0, 1);
        Assert.Equal(1, await RowsReadBy(async snapshot => Assert.Equal($"{Rounds / 2}", (await snapshot.Find("design", "D-07", half))!.Body)));
        Assert.Equal(0, await RowsReadBy(async snapshot => Assert.Equal(0, await snapshot.PositionAt(half - 1_000_000_000))));
    }

    /// <summary>The revisions that were fetched in a transaction after its beginning. None may be found by reading the table.</summary>
    private async Task<long> RowsReadBy(Func<Snapshot, Task> ask)
    {
        const string Read = "SELECT seq_scan * 1000000 + coalesce(idx_tup_fetch, 0) FROM pg_stat_xact_user_tables WHERE relname = 'revision'";
        using var engine = new StoreOnServer(_cluster.ConnectionString(_database)).Engine(_clock);
        engine.Open(_clock.GetUtcNow());
        await using var session = await engine.BeginReading();
        var before = await session.ExecuteScalar<long>(Read);
        await ask(new Snapshot(session));
        return await session.ExecuteScalar<long>(Read) - before;
    }

    private Store Opened()
    {
        var store = new Store(new StoreOnServer(_cluster.ConnectionString(_database)).Engine(_clock), _clock);
        store.Open();
        return store;
    }
}
