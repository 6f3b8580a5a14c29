using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests.Waiting;

/// <summary>A commit whose answer is lost on the way: it was kept, but whoever wrote was told of trouble.</summary>
public sealed class LostAnswerTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-lost-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_store_finds_out_what_was_kept()
    {
        var engine = new LosingEngine(new SqliteEngine(Path.Combine(_folder, "pricefloor.db"), _clock));
        using var store = new Store(engine, _clock);
        store.Open();
        engine.LosesNextAnswer = true;
        await Assert.ThrowsAsync<StoreTroubleException>(() => store.WriteAsync("test", writing => writing.Save("design", "a", "1", [])));
        for (var tries = 0; store.Position == 0 && tries < 300; tries++)
            await Task.Delay(TimeSpan.FromMilliseconds(100), TestContext.Current.CancellationToken);
        Assert.Equal(1, store.Position);
        Assert.Equal("1", (await store.ReadAsync(snapshot => snapshot.Find("design", "a")))!.Body);
        Assert.Equal(2, (await store.WriteAsync("test", writing => writing.Save("design", "a", "2", []))).Number);
        Assert.Equal(2, store.Position);
    }

    /// <summary>Keeps, and then says that it does not know.</summary>
    private sealed class LosingEngine(Engine inner) : Engine
    {
        public bool LosesNextAnswer { get; set; }

        public override bool AnswersAtOnce => false;

        public override long Bytes => inner.Bytes;

        public override bool IsBehind() => inner.IsBehind();

        public override void Dispose() => inner.Dispose();

        protected internal override Opened Open(DateTimeOffset now) => inner.Open(now);

        protected internal override ValueTask<Session> BeginReading() => inner.BeginReading();

        protected internal override async ValueTask<Session> BeginWriting() => new LosingSession(await inner.BeginWriting(), this);

        protected internal override ValueTask<Staging> BeginStaging() => inner.BeginStaging();

        protected internal override ValueTask Probe(TimeSpan within, DateTimeOffset now) => inner.Probe(within, now);

        protected internal override void Committed(long position, long number) => inner.Committed(position, number);
    }

    private sealed class LosingSession(Session inner, LosingEngine engine) : Session
    {
        public override bool HasEnded => inner.HasEnded;

        public override ValueTask<int> Execute(string sql, object? parameters = null) => inner.Execute(sql, parameters);

        public override ValueTask MakeTemporary(string table, IReadOnlyList<TemporaryColumn> columns) => inner.MakeTemporary(table, columns);

        public override ValueTask Fill(string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows) => inner.Fill(table, columns, rows);

        public override ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null) where T : default =>
            inner.ExecuteScalar<T>(sql, parameters);

        public override ValueTask<List<T>> Query<T>(string sql, object? parameters = null) => inner.Query<T>(sql, parameters);

        public override ValueTask Read(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take) =>
            inner.Read(sql, parameters, take);

        public override async ValueTask Keep()
        {
            await inner.Keep();
            if (!engine.LosesNextAnswer)
                return;
            engine.LosesNextAnswer = false;
            throw new StoreTroubleException(StoreTrouble.Busy, new IOException("the connection ended"));
        }

        public override ValueTask Mark(string moment) => inner.Mark(moment);

        public override ValueTask GoBackTo(string moment) => inner.GoBackTo(moment);

        public override ValueTask DisposeAsync() => inner.DisposeAsync();
    }
}
