using System.Diagnostics;
using Npgsql;
using PriceFloor.Storage.Postgres;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>
/// A primary and a standby of its own for one test, whose commits are safe on the disk: either can be killed with all its processes (SIGKILL), and
/// the standby promoted. Both end with the test, however it ends.
/// </summary>
public sealed class FailoverCluster : IDisposable
{
    private const string Script =
        """
        unset TMPDIR
        folder=$(mktemp -d)
        mkdir "$folder/a.s" "$folder/b.s"
        start() {
            "$bin/postgres" -D "$folder/$1" -k "$folder/$1.s" -c listen_addresses= -c max_connections=60 > "$folder/$1.log" 2>&1 &
            echo $! > "$folder/$1.pid"
            until "$bin/pg_isready" -q -h "$folder/$1.s"; do kill -0 $(cat "$folder/$1.pid") || break; sleep 0.05; done
        }
        end() { kill -$1 $(cat "$folder/$2.pid") 2> /dev/null; wait $(cat "$folder/$2.pid") 2> /dev/null; }
        # Everything of it at once; what is left of a killed server would keep the next one from starting.
        slay() {
            main=$(cat "$folder/$1.pid")
            all="$main $(cat /proc/$main/task/$main/children)"
            kill -KILL $all 2> /dev/null
            wait $main 2> /dev/null
            for one in $all; do while kill -0 $one 2> /dev/null; do sleep 0.01; done; done
        }
        bin=$0
        "$bin/initdb" -D "$folder/a" -A trust -U postgres --no-sync -E UTF8 --locale=C > /dev/null
        start a
        "$bin/pg_basebackup" -h "$folder/a.s" -U postgres -D "$folder/b" -R -X stream -c fast > /dev/null
        start b
        echo "$folder"
        while read -r what which; do
            case $what in
                start) start $which ;;
                stop) end INT $which ;;
                kill) slay $which ;;
                promote) "$bin/pg_ctl" promote -D "$folder/$which" > /dev/null ;;
                synchronous)
                    "$bin/psql" -q -h "$folder/a.s" -U postgres -c "ALTER SYSTEM SET synchronous_standby_names = '*'" \
                        -c "SELECT pg_reload_conf()" > /dev/null ;;
            esac
            echo done
        done
        end QUIT a
        end QUIT b
        rm -rf "$folder"
        """;

    private readonly Process _process;
    private readonly string _folder;

    /// <summary>The cluster of one test; skips it if there is no PostgreSQL.</summary>
    public FailoverCluster()
    {
        _process = PostgresCluster.One.StartedHere(Script);
        _folder = _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException(_process.StandardError.ReadToEnd());
        foreach (var sql in new[] { $"CREATE ROLE {PostgresCluster.Server} LOGIN", $"CREATE DATABASE studio OWNER {PostgresCluster.Server}" })
            Run(sql);
    }

    /// <summary>Both servers; whichever is the primary is used.</summary>
    public string ConnectionString =>
        $"Host={_folder}/a.s,{_folder}/b.s;Database=studio;Username={PostgresCluster.Server};Target Session Attributes=primary";

    /// <summary>Starts, stops, kills or promotes server a or b; or makes a wait for b: "synchronous".</summary>
    public void Do(string what)
    {
        _process.StandardInput.WriteLine(what);
        if (_process.StandardOutput.ReadLine() is null)
            throw new InvalidOperationException($"{what}: {_process.StandardError.ReadToEnd()}");
    }

    /// <summary>Opens a store there, as a process does.</summary>
    public Store Opened(bool losesNothing = false)
    {
        var store = new Store(new StoreOnServer(ConnectionString, new ServerChoices(LosesNothing: losesNothing)).Engine(TimeProvider.System),
            TimeProvider.System);
        store.Open();
        return store;
    }

    public void Dispose()
    {
        _process.StandardInput.Close();
        _process.WaitForExit();
        _process.Dispose();
    }

    private void Run(string sql)
    {
        using var source = NpgsqlDataSource.Create($"Host={_folder}/a.s;Database=postgres;Username=postgres");
        using var command = source.CreateCommand(sql);
        command.ExecuteNonQuery();
    }
}
