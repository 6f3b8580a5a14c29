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
    private readonly ServerChoices _choices;
    private readonly ServedStudio _studio;
    private readonly Presence _presence;

    /// <param name="connectionString">Where the database is, and as whom to use it.</param>
    /// <param name="name">Its name, with no secret in it.</param>
    /// <param name="choices">What whoever runs the server chooses.</param>
    public PostgresEngine(string connectionString, string name, ServerChoices choices)
    {
        (_name, _choices, _studio) = (name, choices, new ServedStudio(ServedStudio.First, choices.LosesNothing));
        (_source, _patient) = (NpgsqlDataSource.Create(connectionString), NpgsqlDataSource.Create(Patient.Of(connectionString)));
        _presence = new Presence(_patient);
    }

    public override bool IsShared => true;

    public override TimeSpan? AsksEvery => _choices.AsksEvery;

    public override int Processes => _presence.Count;

    public override bool AnswersAtOnce => false;

    public override long Bytes => Sized().AtOnce();

    public override bool IsBehind() => Behind().AtOnce();

    public override void Dispose()
    {
        _presence.Dispose();
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

    /// <summary>A statement alone sees everything that was committed before it came.</summary>
    protected internal override async ValueTask<StorePoint> Ask()
    {
        await using var connection = await _source.Connect();
        return ServedStudio.Of((await connection.Together(_studio.Reading))!).Standing.Point;
    }

    protected internal override async ValueTask<Session> BeginWriting() => await PostgresSession.Writing(await _source.Connect(), _studio);

    protected internal override async ValueTask<Staging> BeginStaging() => new PostgresStaging(await _patient.Connect(), _studio);

    /// <summary>Locks nobody out.</summary>
    protected internal override async ValueTask Probe(TimeSpan within, DateTimeOffset now)
    {
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
        var why = session.WhyAnotherLife ?? await session.Resume(_studio); // the timeline alone does not tell another database
        var (life, point) = (await new Snapshot(session).LifeName, session.Point!);
        await session.Keep();
        _presence.Begin();
        return new Opened(from > 0 && from < Migrations.Newest ? new Upgrade(from, Migrations.Newest, null) : null, life, point.Position, why)
        {
            Point = point,
        };
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
