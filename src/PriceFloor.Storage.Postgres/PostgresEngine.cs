namespace PriceFloor.Storage.Postgres;

/// <summary>
/// A studio in a database of PostgreSQL, in which every row belongs to one: the process's own, or one of a host's. What was acknowledged is as safe
/// as the server's settings make a commit.
/// </summary>
internal sealed class PostgresEngine : Engine
{
    private readonly SharedServer _shared;
    private readonly Server _server;
    private readonly string _name;
    private readonly ServerChoices _choices;
    private readonly string? _hosted;
    private ServedStudio _studio;
    private (long Bytes, long Position) _size;
    private long _position;
    private bool _isReleased;

    /// <param name="shared">The connections to the database.</param>
    /// <param name="name">Its name, with no secret in it.</param>
    /// <param name="choices">What whoever runs the server chooses.</param>
    /// <param name="hosted">The name of a host's studio; null for the process's own.</param>
    public PostgresEngine(SharedServer shared, string name, ServerChoices choices, string? hosted)
    {
        (_shared, _name, _choices, _hosted) = (shared, name, choices, hosted);
        (_server, _studio) = (shared.Take(), new ServedStudio(ServedStudio.First, choices.LosesNothing));
    }

    public override bool IsShared => true;

    public override TimeSpan? AsksEvery => _choices.AsksEvery;

    public override int Processes => _server.Processes;

    public override bool AnswersAtOnce => false;

    public override long Bytes => _hosted is null ? Sized().AtOnce()
        : _size.Bytes + (Volatile.Read(ref _position) - _size.Position) * Grown;

    /// <summary>About what a further revision takes.</summary>
    private const long Grown = 1024;

    public override bool IsBehind() => Behind().AtOnce();

    public override void Dispose()
    {
        if (!Interlocked.Exchange(ref _isReleased, true))
            _shared.Release();
    }

    protected internal override Opened Open(DateTimeOffset now) => OpenAsync(now).AtOnce();

    protected internal override async ValueTask<Opened> OpenAsync(DateTimeOffset now)
    {
        try
        {
            return await Opening();
        }
        catch (StoreTroubleException e)
        {
            throw Faults.CannotOpen(_name, e);
        }
    }

    protected internal override async ValueTask<Session> BeginReading() => await PostgresSession.Reading(await _server.Source.Connect(), _studio);

    protected internal override ValueTask<StorePoint> Ask() => _server.Questions.Ask(_studio);

    protected internal override async ValueTask<Session> BeginWriting() => await PostgresSession.Writing(await _server.Source.Connect(), _studio);

    protected internal override async ValueTask<Staging> BeginStaging() => new PostgresStaging(await _server.Patient.Connect(), _studio);

    /// <summary>Locks nobody out.</summary>
    protected internal override async ValueTask Probe(TimeSpan within, DateTimeOffset now)
    {
        await using var session = await PostgresSession.Reading(await _server.Source.Connect(), _studio);
        await session.Execute("INSERT INTO probe (written_at) VALUES (@now) ON CONFLICT (studio) DO UPDATE SET written_at = excluded.written_at",
            new { now = Moment.Of(now) });
        await session.Keep();
    }

    /// <summary>The database knows by itself how far it has come.</summary>
    protected internal override void Committed(long position, long number) => Volatile.Write(ref _position, position);

    private async ValueTask<Opened> Opening()
    {
        var from = Migrations.Newest;
        if (!_server.IsChecked)
            await using (var connection = await _server.Patient.Connect())
            {
                from = await Migrations.Bring(connection, _name);
                if (!await connection.ExecuteScalar<bool>("SELECT row_security_active('revision')"))
                    throw new StoreException($"The role in PRICEFLOOR_STORE reads the rows of every studio in {_name} (a superuser, or BYPASSRLS). "
                        + "Use a role that does not.");
            }

        if (_hosted is not null)
            await using (var connection = await _server.Source.Connect())
                _studio = await Hosted.Find(connection, _hosted, _choices.LosesNothing)
                    ?? throw new StoreException($"The store {_name} is not there.");
        var (life, point, why) = await Continued();
        _position = point.Position;
        _server.Begin();
        return new Opened(from > 0 && from < Migrations.Newest ? new Upgrade(from, Migrations.Newest, null) : null, life, point.Position, why)
        {
            Point = point,
        };
    }

    /// <summary>Nearly always it goes on where it was, and two questions tell all of it.</summary>
    private async ValueTask<(string Life, StorePoint Point, string? WhyAnother)> Continued()
    {
        await using (var reading = await PostgresSession.Reading(await _server.Source.Connect(), _studio))
        {
            var (life, goesOn, bytes) = (await reading.Query<(string, bool, long)>(_hosted is null ? Own : OneOfMany)).Single();
            _size = (bytes, reading.Point!.Position);
            if (goesOn)
                return (life, reading.Point, null);
        }

        await using var session = await PostgresSession.Writing(await _server.Source.Connect(), _studio);
        var why = session.WhyAnotherLife ?? await session.Resume(_studio); // the timeline alone does not tell another database
        var begun = (await new Snapshot(session).LifeName, session.Point!, why);
        await session.Keep();
        return begun;
    }

    private const string Own = $"SELECT {Continuity.GoesOn}, 0::bigint AS Bytes FROM life";

    private const string OneOfMany =
        $"""
        SELECT {Continuity.GoesOn}, (SELECT coalesce(sum(octet_length(r.body)), 0) FROM head h JOIN revision r ON r.position = h.position) AS Bytes
        FROM life
        """;

    private async ValueTask<bool> Behind()
    {
        try
        {
            await using var connection = await _server.Source.Connect();
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
            await using var connection = await _server.Source.Connect();
            return await connection.ExecuteScalar<long>("SELECT pg_database_size(current_database())");
        }
        catch (StoreTroubleException)
        {
            return 0;
        }
    }
}
