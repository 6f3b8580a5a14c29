using System.Globalization;
using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>A store in a database of PostgreSQL.</summary>
public sealed class StoreOnServer : StorePlace
{
    private readonly string _connection;
    private readonly ServerChoices _choices;
    private readonly SharedServer _shared;
    private readonly string? _hosted;

    /// <param name="connectionString">Where the database is and as whom to use it, as Npgsql takes it.</param>
    /// <param name="choices">What whoever runs the server chooses.</param>
    /// <exception cref="StoreException">It is none; the message repeats nothing of it.</exception>
    public StoreOnServer(string connectionString, ServerChoices? choices = null)
    {
        _choices = choices ?? new ServerChoices();
        var given = Read(connectionString) ?? throw new StoreException("It cannot be read. Separate its parts with semicolons: "
            + "Host=db;Database=pricefloor;Username=pricefloor;Password=...");
        Unless(given, "Timeout", 3); // seconds until a server that does not answer counts as away
        Unless(given, "Command Timeout", 5);
        Unless(given, "Host Recheck Seconds", 1); // how long a server that was away, or was a standby, is not asked again
        Unless(given, "Max Auto Prepare", 60);
        Unless(given, "MaxPoolSize", 30); // all studios share them, and so do all requests
        given.ApplicationName ??= "pricefloor";
        given.NoResetOnClose = true; // no transaction leaves anything in its session; putting that back would cost each more than it asks
        (_connection, Name) = (given.ConnectionString,
            string.Create(CultureInfo.InvariantCulture, $"PostgreSQL {given.Host}:{given.Port}/{given.Database ?? given.Username}"));
        _shared = new SharedServer(_connection);
    }

    private StoreOnServer(StoreOnServer host, string key)
    {
        (_connection, _choices, _shared, _hosted) = (host._connection, host._choices, host._shared, Hosted.NameOf(key));
        Name = $"{host.Name}, {_hosted}";
    }

    /// <summary>The schema to which this program brings a store on a server.</summary>
    public static int Schema => Migrations.Newest;

    public override string Name { get; }

    public override bool Exists => Asked(async connection => await Migrations.SchemaOf(connection) > 0 && await Find(connection) is not null);

    public override long Bytes => Asked(connection => connection.ExecuteScalar<long>("SELECT pg_database_size(current_database())"));

    public override int NewestSchema => Schema;

    public override bool MakesBackups => false;

    public override string AfterErasing => "and what the server still has of them goes with its next VACUUM, and with the log that it archives";

    public override Engine Engine(TimeProvider clock) => new PostgresEngine(_shared, Name, _choices, _hosted);

    public override bool IsShared => true;

    public override StorePlace OfStudio(string key) => new StoreOnServer(this, key);

    public override Task BeginAsync() => AskedAsync(async connection =>
    {
        await DeleteAll(connection);
        return await Hosted.Begin(connection, _hosted!);
    });

    public override Task DeleteAsync() => AskedAsync(async connection =>
    {
        await DeleteAll(connection);
        return true;
    });

    public override Task<IReadOnlyList<StudioThere>> StudiosAsync() => AskedAsync<IReadOnlyList<StudioThere>>(async connection =>
    [
        .. (await Hosted.All(connection)).Select(one => new StudioThere(one.Key, () => AskedAsync(async other =>
        {
            await Hosted.Delete(other, new ServedStudio(one.Number, _choices.LosesNothing));
            return true;
        }))),
    ]);

    public override T Read<T>(Func<Snapshot, ValueTask<T>> read) => Asked(async connection =>
    {
        await MustBeNewest(connection);
        await using var session = await PostgresSession.Reading(connection, await Studio(connection), isOwner: false);
        return await read(new Snapshot(session));
    });

    public override BackupMade BackUp(string file, Action<string>? growing = null) => throw Faults.NotHere(
        "Use pg_dump for a copy of one moment (as a role that sees every row: a superuser, or one with BYPASSRLS), or base backups with an archived "
        + "log.");

    public override bool TellOfBackup(string file, DateTimeOffset now) => false;

    public override StoreReport Check(Func<string, string, string?> faultOf, Action<long, long>? checkedOf = null) => Asked(async connection =>
    {
        await MustBeNewest(connection);
        await using var session = await PostgresSession.Reading(connection, await Studio(connection), isOwner: false);
        var (told, found) = (await session.Standing(), await session.StandingByRows());
        IReadOnlyList<string> own = told == found with { Life = told.Life } ? [] : [Elsewhere];
        return await StoreChecking.Of(session, Schema, hasLog: true, own, (faultOf, checkedOf));
    });

    private const string Elsewhere = "The row of its life says another place than where the store stands, so what is written next may be refused. "
        + "As the role that owns the tables, name the studio in a transaction (SELECT set_config('pf.studio', ID, true)) and "
        + "SELECT tell_where_it_stands().";

    public override Restored Restore(string file, DateTimeOffset now) => throw Faults.NotHere(
        "Stop the service, restore with pg_restore or from a base backup, and start it again: it notices, and begins another life of the store.");

    public override int Forget(DocumentName document, DateTimeOffset now, IReadOnlyList<string> kindsBelow, bool mayStand) =>
        Erased(session => Erasing.Document(session, document, kindsBelow, mayStand), document.Kind, now, Erasing.NeverWas(document));

    public override int ForgetSource(string source, DateTimeOffset now) =>
        Erased(session => Erasing.Source(session, source), Trail.Log, now, Erasing.NeverSent(source));

    private int Erased(Func<Session, ValueTask<int?>> erase, string kind, DateTimeOffset now, string nothing) => Asked(async connection =>
    {
        await MustBeNewest(connection);
        await using var session = await PostgresSession.Writing(connection, await Studio(connection), isOwner: false);
        var above = await StoreEpoch.HighestNumber(session);
        var gone = await erase(session) ?? throw new StoreException($"{nothing}.");
        await Erasing.Finish(session, kind, above, now);
        await session.Keep();
        return gone;
    });

    private static void Unless(NpgsqlConnectionStringBuilder given, string setting, int ours)
    {
        if (!given.ShouldSerialize(setting))
            given[setting] = ours;
    }

    /// <summary>Null if it cannot be read: the exception that says why may repeat a password.</summary>
    private static NpgsqlConnectionStringBuilder? Read(string connectionString)
    {
        try
        {
            return new NpgsqlConnectionStringBuilder(connectionString);
        }
        catch (Exception e) when (e is ArgumentException or FormatException)
        {
            return null;
        }
    }

    private async ValueTask DeleteAll(NpgsqlConnection connection)
    {
        if (await Find(connection) is { } studio)
            await Hosted.Delete(connection, studio);
    }

    private async ValueTask<ServedStudio> Studio(NpgsqlConnection connection) =>
        await Find(connection) ?? throw new StoreException($"The store {Name} is not there.");

    private async ValueTask<ServedStudio?> Find(NpgsqlConnection connection) => _hosted is null
        ? new ServedStudio(ServedStudio.First, _choices.LosesNothing)
        : await Hosted.Find(connection, _hosted, _choices.LosesNothing);

    private async ValueTask MustBeNewest(NpgsqlConnection connection)
    {
        if (await Migrations.SchemaOf(connection) is var found && found != Schema)
            throw new StoreException(string.Create(CultureInfo.InvariantCulture,
                $"The store {Name} has schema {found}, and this program needs {Schema}. Start the service of this version once."));
    }

    private T Asked<T>(Func<NpgsqlConnection, ValueTask<T>> ask) => new ValueTask<T>(AskedAsync(ask)).AtOnce();

    private async Task<T> AskedAsync<T>(Func<NpgsqlConnection, ValueTask<T>> ask)
    {
        try
        {
            return await Asking(ask);
        }
        catch (StoreTroubleException e)
        {
            throw Faults.CannotOpen(Name, e);
        }
    }

    private async ValueTask<T> Asking<T>(Func<NpgsqlConnection, ValueTask<T>> ask)
    {
        var server = _shared.Take();
        try
        {
            await using var connection = await server.Patient.Connect();
            return await ask(connection);
        }
        finally
        {
            _shared.Release();
        }
    }
}
