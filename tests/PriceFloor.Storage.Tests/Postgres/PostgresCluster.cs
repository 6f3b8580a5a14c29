using System.Diagnostics;
using System.Globalization;
using Npgsql;
using Xunit;
using Scripts = PriceFloor.Storage.Postgres.Migrations;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>
/// A throw-away cluster of the installed PostgreSQL, made once a run when a test first asks for it: reached by a socket alone, and nothing in it is
/// safe from a power cut. It ends with the tests, however they end. Where there is no PostgreSQL, those who ask are skipped;
/// PRICEFLOOR_REQUIRE_POSTGRES=1 makes that a failure.
/// </summary>
public sealed class PostgresCluster
{
    /// <summary>Migrates.</summary>
    public const string Owner = "pricefloor_owner";

    /// <summary>Serves.</summary>
    public const string Server = "pricefloor";

    private const string Superuser = "postgres", Template = "migrated";

    /// <summary>Its standard input ends with the tests, and then so does the server.</summary>
    private const string Script =
        """
        set -e
        unset TMPDIR # it may be too long for the path of a socket, or not for the user of the server
        folder=$(mktemp -d)
        "$0/initdb" -D "$folder/data" -A trust -U postgres --no-sync -E UTF8 --locale=C > /dev/null
        "$0/postgres" -D "$folder/data" -k "$folder" -c listen_addresses= -c fsync=off -c full_page_writes=off -c synchronous_commit=off \
            -c max_connections=200 -c log_min_duration_statement=200 > "$folder/log" 2>&1 &
        server=$!
        until "$0/pg_isready" -q -h "$folder"; do kill -0 $server; sleep 0.05; done
        echo "$folder"
        read -r end || true
        kill -INT $server
        wait $server || true
        rm -rf "$folder"
        """;

    private static readonly Lazy<PostgresCluster?> s_one = new(() => Binaries() is { } binaries ? new PostgresCluster(binaries) : null);

    private readonly string _binaries, _folder;
    private readonly Process _process; // as long as this is held, its input stays open
    private int _made;

    private PostgresCluster(string binaries)
    {
        _binaries = binaries;
        _process = Started("sh", "-c", Script, binaries);
        _folder = _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException($"No cluster: {_process.StandardError.ReadToEnd()}");
        Run(Superuser, Superuser, $"CREATE ROLE {Owner} LOGIN; CREATE ROLE {Server} LOGIN");
        Run(Superuser, Superuser, $"CREATE DATABASE {Template} OWNER {Owner}");
        using var source = NpgsqlDataSource.Create(ConnectionString(Template, Owner));
        using var connection = source.OpenConnection();
        Scripts.Bring(connection, Template).AsTask().GetAwaiter().GetResult();
    }

    /// <summary>The cluster of this run; skips the test that asks if there is no PostgreSQL.</summary>
    public static PostgresCluster One
    {
        get
        {
            if (s_one.Value is { } cluster)
                return cluster;
            const string Why = "SKIPPED: no PostgreSQL (apt-get install postgresql), so this was not tested on it";
            if (Environment.GetEnvironmentVariable("PRICEFLOOR_REQUIRE_POSTGRES") == "1")
                Assert.Fail(Why);
            Assert.Skip(Why);
            return null!;
        }
    }

    /// <summary>A database of its own for one test; it is empty, or has been migrated by its owner.</summary>
    public string NewDatabase(bool isMigrated = true)
    {
        var name = $"test_{Interlocked.Increment(ref _made)}";
        Run(Superuser, Superuser, $"CREATE DATABASE {name} OWNER {Owner}{(isMigrated ? $" TEMPLATE {Template}" : "")}");
        return name;
    }

    public void Drop(string database) => Run(Superuser, Superuser, $"DROP DATABASE IF EXISTS {database} WITH (FORCE)");

    /// <summary>Copies a database as it is, and returns what puts the copy in its place.</summary>
    public Action Dump(string database)
    {
        var file = $"{_folder}/{database}.{Guid.NewGuid():N}";
        Tool("pg_dump", "-h", _folder, "-U", Superuser, "-Fc", "-f", file, database);
        return () =>
        {
            Drop(database);
            Run(Superuser, Superuser, $"CREATE DATABASE {database} OWNER {Owner}");
            Tool("pg_restore", "-h", _folder, "-U", Superuser, "-d", database, file);
        };
    }

    /// <summary>Runs a script whose first word is the folder of the binaries.</summary>
    public Process StartedHere(string script) => Started("sh", "-c", script, _binaries);

    /// <summary>How a role reaches a database, patiently: all tests may run at once on two processors.</summary>
    public string ConnectionString(string database, string role = Server) =>
        $"Host={_folder};Database={database};Username={role};Timeout=60;Command Timeout=120";

    /// <summary>Runs statements, each on its own.</summary>
    public void Run(string database, string role, string sql)
    {
        using var source = NpgsqlDataSource.Create(ConnectionString(database, role));
        using var command = source.CreateCommand(sql);
        command.ExecuteNonQuery();
    }

    /// <summary>The first column of what a question of the server's administrator answers.</summary>
    public IReadOnlyList<string> Read(string database, string sql)
    {
        using var source = NpgsqlDataSource.Create(ConnectionString(database, Superuser));
        using var command = source.CreateCommand(sql);
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
            rows.Add(reader.GetString(0));
        return rows;
    }

    /// <summary>What the rows of lives say of where their studios stand, and what the rows of the studios say, where these differ.</summary>
    public IReadOnlyList<string> WrongStandings(string database) => Read(database,
        """
        SELECT 'studio ' || l.studio || ': ' || (l.newest, l.newest_at, l.newest_event)::text || ' instead of ' || (r.newest, r.at, e.newest)::text
        FROM life l
        CROSS JOIN LATERAL (SELECT coalesce(max(position), 0) AS newest, coalesce(max(saved_at), 0) AS at FROM revision WHERE studio = l.studio) r
        CROSS JOIN LATERAL (SELECT coalesce(max(position), 0) AS newest FROM event WHERE studio = l.studio) e
        WHERE (l.newest, l.newest_at, l.newest_event) IS DISTINCT FROM (r.newest, r.at, e.newest)
        """);

    /// <summary>The newest that is installed, or what is in the folder that PRICEFLOOR_POSTGRES names; null if none is.</summary>
    private static string? Binaries() => Environment.GetEnvironmentVariable("PRICEFLOOR_POSTGRES") is { Length: > 0 } named
        ? File.Exists(Path.Combine(named, "initdb")) ? named : null
        : OperatingSystem.IsWindows() || !Directory.Exists("/usr/lib/postgresql") ? null
        : Directory.GetDirectories("/usr/lib/postgresql")
            .OrderByDescending(folder => int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var version) ? version : 0)
            .Select(folder => Path.Combine(folder, "bin")).FirstOrDefault(folder => File.Exists(Path.Combine(folder, "initdb")));

    private void Tool(string name, params string[] arguments)
    {
        using var process = Started(Path.Combine(_binaries, name), arguments);
        process.StandardInput.Close();
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, said);
    }

    /// <summary>The server refuses to be started by root.</summary>
    private static Process Started(string program, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/", // every user may be there
            FileName = Environment.UserName == "root" ? "runuser" : program,
        };
        foreach (var argument in Environment.UserName == "root" ? ["-u", "postgres", "--", program, .. arguments] : arguments)
            start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }
}
