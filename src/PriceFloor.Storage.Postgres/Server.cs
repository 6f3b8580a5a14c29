using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>What all studios of a process share of their database: its connections, and the question where each stands.</summary>
internal sealed class Server : IDisposable
{
    private readonly Presence _presence;

    public Server(string connectionString)
    {
        (Source, Patient) = (NpgsqlDataSource.Create(connectionString), NpgsqlDataSource.Create(Postgres.Patient.Of(connectionString)));
        _presence = new Presence(Patient);
        Questions = new Questions(AskAsync);
    }

    public NpgsqlDataSource Source { get; }

    /// <summary>For what may take long.</summary>
    public NpgsqlDataSource Patient { get; }

    public Questions Questions { get; }

    /// <summary>How many processes serve the database, this one included.</summary>
    public int Processes => _presence.Count;

    /// <summary>Whether its tables are those of this program and its role sees one studio at a time.</summary>
    public bool IsChecked { get; private set; }

    /// <summary>It serves from here on.</summary>
    public void Begin()
    {
        IsChecked = true;
        _presence.Begin();
    }

    public void Dispose()
    {
        _presence.Dispose();
        Source.Dispose();
        Patient.Dispose();
    }

    /// <summary>One round trip. A statement sees everything that was committed before it came.</summary>
    private async Task<IReadOnlyList<StorePoint?>> AskAsync(IReadOnlyList<ServedStudio> studios)
    {
        await using var connection = await Source.Connect();
        var points = (await connection.Rows(ServedStudio.AllStand, studios.Select(studio => studio.Number).Distinct().ToArray()))
            .ToDictionary(row => (int)row[^1]!, row => ServedStudio.Of(row).Standing.Point);
        return [.. studios.Select(studio => points.GetValueOrDefault(studio.Number))];
    }
}

/// <summary>The server of a place, as long as an engine uses it.</summary>
/// <param name="connectionString">Where the database is, and as whom to use it.</param>
internal sealed class SharedServer(string connectionString)
{
    private readonly Lock _lock = new();
    private Server? _server;
    private int _uses;

    public Server Take()
    {
        lock (_lock)
        {
            _uses++;
            return _server ??= new Server(connectionString);
        }
    }

    public void Release()
    {
        Server? unused = null;
        lock (_lock)
            if (--_uses == 0)
                (unused, _server) = (_server, null);
        unused?.Dispose();
    }
}
