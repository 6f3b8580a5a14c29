using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>
/// One process at a time serves a studio, also from other machines: it would answer from memory that another's writes have made old. The lock ends
/// with its connection. Whoever takes it signs the studio's row, so one that served before, and lost its lock, can neither write to the store nor
/// read it any more.
/// </summary>
internal sealed class StudioHold : IDisposable
{
    private readonly NpgsqlDataSource _source;
    private NpgsqlConnection _connection;

    private StudioHold(NpgsqlDataSource source, NpgsqlConnection connection) => (_source, _connection) = (source, connection);

    /// <summary>Takes the lock, or throws if another process has it. A database without a store has nothing to sign.</summary>
    public static async ValueTask<StudioHold> Take(string connectionString, string name)
    {
        var source = NpgsqlDataSource.Create(connectionString);
        NpgsqlConnection? connection = null;
        try
        {
            connection = await Locked(source) ?? throw new StoreException(
                $"Another PriceFloor is using the store {name}. Stop it first: one process at a time serves a store.")
            {
                Trouble = StoreTrouble.Busy,
            };
            if (await Migrations.SchemaOf(connection) > 0)
                await Sign(source);
            return new StudioHold(source, connection);
        }
        catch (Exception e)
        {
            if (connection is not null)
                await connection.DisposeAsync();
            await source.DisposeAsync();
            throw e is StoreTroubleException trouble ? Faults.CannotOpen(name, trouble) : e;
        }
    }

    /// <summary>
    /// Takes the lock again if its connection broke, as after a restart of the server. If another process was quicker, it has signed, and nothing
    /// works here any more.
    /// </summary>
    public async ValueTask Renew()
    {
        if (_connection.IsBroken() || await IsGone())
        {
            await _connection.DisposeAsync();
            _connection = await Locked(_source) ?? await _source.Connect();
        }
    }

    public void Dispose()
    {
        _connection.Dispose();
        _source.Dispose();
    }

    /// <summary>A connection that has the lock; null if another has it.</summary>
    private static async ValueTask<NpgsqlConnection?> Locked(NpgsqlDataSource source)
    {
        var connection = await source.Connect();
        try
        {
            if (await connection.ExecuteScalar<bool>("SELECT pg_try_advisory_lock(hashtext('pricefloor'), @First)", new { ServedStudio.First }))
                return connection;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }

        await connection.DisposeAsync();
        return null;
    }

    private static async ValueTask Sign(NpgsqlDataSource source)
    {
        await using var session = await PostgresSession.Writing(await source.Connect(), new ServedStudio());
        await session.Execute("UPDATE life SET server = @server", new { server = Guid.NewGuid().ToString("N") });
        await session.Keep();
    }

    /// <summary>A connection looks open until it is used.</summary>
    private async ValueTask<bool> IsGone()
    {
        try
        {
            await _connection.ExecuteScalar<int>("SELECT 1");
            return false;
        }
        catch (StoreTroubleException)
        {
            return true;
        }
    }
}
