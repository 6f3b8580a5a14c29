using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>
/// How many processes serve the database: each holds the same lock, which they share, on a connection of its own. It ends with the connection, so a
/// process that ends in any way no longer counts.
/// </summary>
/// <param name="source">Where to connect.</param>
internal sealed class Presence(NpgsqlDataSource source) : IDisposable
{
    private const string Counted =
        """
        SELECT count(*) FROM pg_locks WHERE locktype = 'advisory' AND granted
            AND database = (SELECT oid FROM pg_database WHERE datname = current_database())
            AND classid::bigint = (hashtext('pricefloor')::bigint & 4294967295) AND objid = 1
        """;

    private static readonly TimeSpan s_every = TimeSpan.FromSeconds(2);

    private readonly CancellationTokenSource _ending = new();
    private Task? _watching;
    private int _count = 1;

    /// <summary>This one included.</summary>
    public int Count => Volatile.Read(ref _count);

    /// <summary>Begins to be counted, and to count.</summary>
    public void Begin() => _watching ??= Task.Run(WatchAsync);

    public void Dispose()
    {
        _ending.Cancel();
        if (_watching is { } watching)
            new ValueTask(watching).AtOnce();
        _ending.Dispose();
    }

    private async Task WatchAsync()
    {
        while (!_ending.IsCancellationRequested)
        {
            try
            {
                await CountAsync();
            }
            catch (StoreTroubleException)
            {
                // The server is away: what was counted last stands until it is back.
            }

            await PauseAsync();
        }
    }

    /// <summary>As long as the connection holds.</summary>
    private async Task CountAsync()
    {
        await using var connection = await source.Connect();
        await connection.ExecuteScalar<object>("SELECT pg_advisory_lock_shared(hashtext('pricefloor'), 1)");
        while (!_ending.IsCancellationRequested)
        {
            Volatile.Write(ref _count, int.Max(1, (int)await connection.ExecuteScalar<long>(Counted)));
            await PauseAsync();
        }
    }

    private async Task PauseAsync() => await Task.Delay(s_every, _ending.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
}
