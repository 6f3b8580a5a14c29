using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using Dapper;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>
/// A process that writes is killed at a random moment, repeatedly on the same store: what it acknowledged is there, whole; what it did not
/// acknowledge is there completely or not at all. <c>PRICEFLOOR_CRASH_ROUNDS</c> sets how often; tests/crash-500.sh sets 500.
/// </summary>
public sealed class CrashTests
{
    private const string WriterFolder = "PRICEFLOOR_CRASH_WRITER";

    /// <summary>Every key is written twice in one transaction, as two kinds, so a half transaction would show.</summary>
    private static readonly string[] s_kinds = ["design", "profile"];

    [Fact]
    public async Task What_was_acknowledged_outlives_a_process_that_is_killed()
    {
        var rounds = int.Parse(Environment.GetEnvironmentVariable("PRICEFLOOR_CRASH_ROUNDS") ?? "50", CultureInfo.InvariantCulture);
        var seed = Environment.TickCount;
        var random = new Random(seed);
        var folder = Directory.CreateTempSubdirectory("pricefloor-crash-").FullName;
        try
        {
            var acknowledged = new HashSet<(string Key, long Number)>();
            var total = 0;
            for (var round = 1; round <= rounds; round++)
            {
                if (round % 50 == 1 && round > 1) // a store that grows for hundreds of rounds takes longer to read than to write
                {
                    total += acknowledged.Count;
                    acknowledged.Clear();
                    File.Delete(PathIn(folder));
                    File.Delete(PathIn(folder) + "-wal");
                    File.Delete(PathIn(folder) + "-shm");
                    File.Delete(PathIn(folder) + ".highwater");
                }

                acknowledged.UnionWith(await WriteAndKill(folder, random.Next(50, 400)));
                AllIsThere(folder, acknowledged, $"round {round}, seed {seed}");
            }

            total += acknowledged.Count;
            Assert.True(total > rounds, $"Only {total} writes were acknowledged in {rounds} rounds.");
            TestContext.Current.TestOutputHelper?.WriteLine($"{rounds} kills, {total} acknowledged writes, none lost.");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<List<(string Key, long Number)>> WriteAndKill(string folder, int milliseconds)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(CrashTests).Assembly.Location])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment[WriterFolder] = folder;
        using var writer = Process.Start(start)!;
        var errors = writer.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.Equal("ready", await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
        var output = writer.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await Task.Delay(milliseconds, TestContext.Current.CancellationToken);
        writer.Kill(); // SIGKILL: nothing of the process runs after it
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal("", await errors);
        Assert.NotEqual(0, writer.ExitCode);
        return [.. (await output).Split('\n').Select(line => line.Split(' ')).Where(words => words is [_, _, "ok"])
            .Select(words => (words[0], long.Parse(words[1], CultureInfo.InvariantCulture)))];
    }

    private static void AllIsThere(string folder, HashSet<(string Key, long Number)> acknowledged, string when)
    {
        using var connection = new SqliteConnection($"Data Source={PathIn(folder)};Pooling=False");
        connection.Open();
        Assert.Equal("ok", connection.ExecuteScalar<string>("PRAGMA integrity_check"));
        var found = s_kinds.ToDictionary(kind => kind, _ => new HashSet<(string, long)>());
        foreach (var (kind, key, number, body) in connection.Query<(string, string, long, string)>(
            "SELECT kind, key, number, body FROM revision", buffered: false))
        {
            Assert.True(body == BodyOf(kind, key, number), $"{kind} {key} {number} is not whole, {when}");
            found[kind].Add((key, number));
        }

        Assert.True(found["design"].SetEquals(found["profile"]), $"Half of a transaction is there, {when}");
        Assert.True(acknowledged.IsSubsetOf(found["design"]), $"Something acknowledged is gone, {when}");
        Assert.Equal(0, connection.ExecuteScalar<long>(
            "SELECT count(*) FROM head h WHERE h.position <> (SELECT max(r.position) FROM revision r WHERE r.kind = h.kind AND r.key = h.key)"));
    }

    private static string PathIn(string folder) => Path.Combine(folder, "pricefloor.db");

    /// <summary>A text of varying length, up to a few pages, that can be recognised by its name.</summary>
    private static string BodyOf(string kind, string key, long number) =>
        $"{{\"{kind}\":\"{key}@{number}\",\"text\":\"{new string((char)('a' + number % 26), (int)(number * 397 % 9000))}\",\"end\":{number}}}";

    /// <summary>The same program as a writer: before the tests would begin, if the environment says so.</summary>
    [ModuleInitializer]
    internal static void WriteUntilKilled()
    {
        if (Environment.GetEnvironmentVariable(WriterFolder) is not { Length: > 0 } folder)
            return;
        new Thread(() => // were the tests themselves ended midway, this would write until the disk is full: what they hold open is closed then
        {
            while (Console.In.Read() >= 0) { }
            Environment.Exit(1);
        })
        { IsBackground = true }.Start();
        using var store = new Store(new SqliteEngine(PathIn(folder), TimeProvider.System), TimeProvider.System);
        store.Open();
        if (store.WhyAnotherLife is { } why)
            Console.Error.WriteLine(why); // a kill leaves no message
        using var output = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        output.Write("ready\n");
        for (var i = 0; ; i++)
        {
            var key = $"k{i % 7}";
            var number = store.Write("crash", async writing =>
            {
                var next = ((await writing.Newest(s_kinds[0], key))?.Number ?? 0) + 1;
                foreach (var kind in s_kinds)
                    await writing.Save(kind, key, BodyOf(kind, key, next), [new DocumentName("channel", key)]);
                return next;
            });
            output.Write($"{key} {number} ok\n");
        }
    }
}
