using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>
/// A database of PostgreSQL, in which every row belongs to a studio; this engine serves the first one. What was acknowledged is as safe as the
/// server's settings make a commit.
/// </summary>
internal sealed class PostgresEngine : Engine
{
    private readonly NpgsqlDataSource _source, _patient;
    private readonly string _name;
    private readonly Func<ValueTask> _renew;
    private readonly ServedStudio _studio = new();

    /// <param name="connectionString">Where the database is, and as whom to use it.</param>
    /// <param name="name">Its name, with no secret in it.</param>
    /// <param name="renew">Renews what keeps other processes from serving the studio, if it was lost.</param>
    public PostgresEngine(string connectionString, string name, Func<ValueTask> renew) =>
        (_source, _patient, _name, _renew) =
            (NpgsqlDataSource.Create(connectionString), NpgsqlDataSource.Create(Patient.Of(connectionString)), name, renew);

    public override bool AnswersAtOnce => false;

    public override long Bytes => Sized().AtOnce();

    public override bool IsBehind() => Behind().AtOnce();

    public override void Dispose()
    {
        _source.Dispose();
        _patient.Dispose();
    }

    protected internal override Opened Open(DateTimeOffset now)
    {
        try
        {
            return Opening().AtOnce();
        }
        catch (StoreTroubleException e)
        {
            throw Faults.CannotOpen(_name, e);
        }
    }

    protected internal override async ValueTask<Session> BeginReading() => await PostgresSession.Reading(await _source.Connect(), _studio);

    protected internal override async ValueTask<Session> BeginWriting() => await PostgresSession.Writing(await _source.Connect(), _studio);

    protected internal override async ValueTask<Staging> BeginStaging() => new PostgresStaging(await _patient.Connect(), _studio);

    /// <summary>Locks nobody out.</summary>
    protected internal override async ValueTask Probe(TimeSpan within, DateTimeOffset now)
    {
        await _renew();
        await using var session = await PostgresSession.Reading(await _source.Connect(), _studio);
        await session.Execute("INSERT INTO probe (written_at) VALUES (@now) ON CONFLICT (studio) DO UPDATE SET written_at = excluded.written_at",
            new { now = Moment.Of(now) });
        await session.Keep();
    }

    protected internal override void Committed(long position, long number)
    {
        // The database knows by itself how far it has come.
    }

    private async ValueTask<Opened> Opening()
    {
        int from;
        await using (var connection = await _patient.Connect())
        {
            from = await Migrations.Bring(connection, _name);
            if (!await connection.ExecuteScalar<bool>("SELECT row_security_active('revision')"))
                throw new StoreException($"The role in PRICEFLOOR_STORE reads the rows of every studio in {_name} (a superuser, or BYPASSRLS). "
                    + "Use a role that does not.");
        }

        await using var session = await PostgresSession.Writing(await _source.Connect(), _studio);
        var why = await Continuity.Resume(session);
        var snapshot = new Snapshot(session);
        var (life, position) = (await snapshot.LifeName, await snapshot.Position);
        var standing = await session.ExecuteScalar<string>(ServedStudio.Standing);
        await session.Keep();
        _studio.Begin(standing!);
        return new Opened(from > 0 && from < Migrations.Newest ? new Upgrade(from, Migrations.Newest, null) : null, life, position, why);
    }

    private async ValueTask<bool> Behind()
    {
        try
        {
            await using var connection = await _source.Connect();
            return await Migrations.SchemaOf(connection) is > 0 and var schema && schema < Migrations.Newest;
        }
        catch (StoreTroubleException)
        {
            return false; // opening it says why
        }
    }

    private async ValueTask<long> Sized()
    {
        try
        {
            await using var connection = await _source.Connect();
            return await connection.ExecuteScalar<long>("SELECT pg_database_size(current_database())");
        }
        catch (StoreTroubleException)
        {
            return 0;
        }
    }
}
