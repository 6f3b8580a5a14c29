using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// A throw-away cluster of the installed PostgreSQL, as a new installation has it: a commit is acknowledged when it is on the disk. Its files are in
/// the folder of temporary files, where the stores of the other services are too. It ends with this process, however that ends.
/// </summary>
public sealed class PostgresServer : IAsyncDisposable
{
    private const string Script =
        """
        set -e
        folder=$(mktemp -d -p "$1")
        sockets=$(mktemp -d -p /tmp) # the path of a socket must be short
        "$0/initdb" -D "$folder/data" -A trust -U postgres --no-sync -E UTF8 --locale=C > /dev/null
        "$0/postgres" -D "$folder/data" -k "$sockets" -c listen_addresses= $2 > "$folder/log" 2>&1 &
        server=$!
        until "$0/pg_isready" -q -h "$sockets"; do kill -0 $server; sleep 0.05; done
        echo "$sockets"
        read -r end || true
        kill -INT $server
        wait $server || true
        rm -rf "$folder" "$sockets"
        """;

    private readonly string _binaries, _sockets;
    private readonly Process _process;

    private PostgresServer(string binaries, string sockets, Process process) => (_binaries, _sockets, _process) = (binaries, sockets, process);

    /// <summary>Starts one; null, and it is said, where PostgreSQL is not installed.</summary>
    /// <param name="settings">What it has otherwise than a new installation, as its options.</param>
    public static async Task<PostgresServer?> StartAsync(string settings = "")
    {
        if (Binaries() is not { } binaries)
        {
            Console.WriteLine("skipped: no PostgreSQL (apt-get install postgresql)");
            return null;
        }

        var process = Started("sh", "-c", Script, binaries, Path.GetTempPath(), settings);
        var sockets = await process.StandardOutput.ReadLineAsync()
            ?? throw new InvalidOperationException($"No cluster: {await process.StandardError.ReadToEndAsync()}");
        var server = new PostgresServer(binaries, sockets, process);
        await server.RunAsync("postgres", "CREATE ROLE pricefloor LOGIN");
        Console.WriteLine($"PostgreSQL: {await server.RunAsync("postgres", "SHOW server_version")}");
        return server;
    }

    /// <summary>Makes an empty database, and returns how the service reaches it.</summary>
    public async Task<string> MakeAsync(string database)
    {
        await RunAsync("postgres", $"CREATE DATABASE {database} OWNER pricefloor");
        return $"Host={_sockets};Database={database};Username=pricefloor";
    }

    /// <summary>Runs a script as who may do everything; returns what it says.</summary>
    public Task<string> RunAsync(string database, string sql) => AskedAsync(Started(Path.Combine(_binaries, "psql"), "-q", "-X", "-A", "-t",
        "-v", "ON_ERROR_STOP=1", "-h", _sockets, "-U", "postgres", "-d", database), sql);

    public async ValueTask DisposeAsync()
    {
        _process.StandardInput.Close();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    /// <summary>Gives a program a script, and returns what it prints without the end of its last line.</summary>
    public static async Task<string> AskedAsync(Process program, string script)
    {
        using (program)
        {
            var fault = program.StandardError.ReadToEndAsync();
            await program.StandardInput.WriteAsync(script);
            program.StandardInput.Close();
            var said = await program.StandardOutput.ReadToEndAsync();
            await program.WaitForExitAsync();
            return program.ExitCode == 0 ? said.TrimEnd() : throw new InvalidOperationException(await fault);
        }
    }

    private static string? Binaries() => OperatingSystem.IsWindows() || !Directory.Exists("/usr/lib/postgresql") ? null
        : Directory.GetDirectories("/usr/lib/postgresql")
            .OrderByDescending(folder => int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var version) ? version : 0)
            .Select(folder => Path.Combine(folder, "bin")).FirstOrDefault(folder => File.Exists(Path.Combine(folder, "initdb")));

    /// <summary>The server refuses to be started by root.</summary>
    private static Process Started(string program, params IEnumerable<string> arguments) => Environment.UserName == "root"
        ? Process.Start(Piped("runuser", ["-u", "postgres", "--", program, .. arguments]))!
        : Process.Start(Piped(program, arguments))!;

    /// <summary>How to start a program that is written to and read from.</summary>
    public static ProcessStartInfo Piped(string program, params IEnumerable<string> arguments) => new(program, arguments)
    {
        UseShellExecute = false,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
        WorkingDirectory = "/", // every user may be there
    };
}
