namespace PriceFloor.Storage.Tests.Waiting;

/// <summary>A transaction whose every answer comes later. It takes one question at a time, as a connection to a server does.</summary>
/// <param name="inner">The transaction that answers.</param>
public sealed class WaitingSession(Session inner) : Session
{
    private int _asked;

    public override bool HasEnded => inner.HasEnded;

    public override ValueTask<int> Execute(string sql, object? parameters = null) => Later(() => inner.Execute(sql, parameters));

    public override async ValueTask MakeTemporary(string table, IReadOnlyList<TemporaryColumn> columns) =>
        await Later(() => Done(inner.MakeTemporary(table, columns)));

    public override async ValueTask Fill(string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows) =>
        await Later(() => Done(inner.Fill(table, columns, rows)));

    public override async ValueTask Insert(string table, IReadOnlyList<string> columns, IReadOnlyList<object?[]> rows) =>
        await Later(() => Done(inner.Insert(table, columns, rows)));

    public override ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null) where T : default =>
        Later(() => inner.ExecuteScalar<T>(sql, parameters));

    public override ValueTask<List<T>> Query<T>(string sql, object? parameters = null) => Later(() => inner.Query<T>(sql, parameters));

    public override async ValueTask Read(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take) =>
        await Later(() => Done(inner.Read(sql, parameters, take)));

    public override async ValueTask Keep() => await Later(() => Done(inner.Keep()));

    public override async ValueTask Mark(string moment) => await Later(() => Done(inner.Mark(moment)));

    public override async ValueTask GoBackTo(string moment) => await Later(() => Done(inner.GoBackTo(moment)));

    public override async ValueTask DisposeAsync() => await Later(() => Done(inner.DisposeAsync()));

    private async ValueTask<T> Later<T>(Func<ValueTask<T>> ask)
    {
        if (Interlocked.Exchange(ref _asked, 1) == 1)
            throw new InvalidOperationException("The answer to the question before was not awaited.");
        try
        {
            await Task.Yield();
            return await ask();
        }
        finally
        {
            Volatile.Write(ref _asked, 0);
        }
    }

    private static async ValueTask<bool> Done(ValueTask work)
    {
        await work;
        return true;
    }
}
