using System.Diagnostics;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The real program as a process: its verbs, the lock between two, and starts that fail with one sentence.</summary>
public sealed class ProgramTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-program-").FullName;

    private string Db => Path.Combine(_folder, "pricefloor.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_second_service_is_refused_and_verbs_that_only_read_are_not()
    {
        using var service = Start(_folder, new Dictionary<string, string>());
        await Ready(service);
        var second = await Run(_folder);
        Assert.Equal(1, second.Code);
        OneSentence(second.Errors, _folder, Path.Combine(_folder, "pricefloor.lock"), $"pid {service.Process.Id}, started 2",
            "Stop it first", "PRICEFLOOR_DATA");
        foreach (var verb in new string[][] { ["restore", "x.db"], ["forget", "design", "a"] })
        {
            var refused = await Run(_folder, verb);
            Assert.Equal(1, refused.Code);
            OneSentence(refused.Errors, $"pid {service.Process.Id}");
        }

        var backup = await Run(_folder, "backup", Path.Combine(_folder, "b.db"));
        Assert.Equal((0, ""), (backup.Code, backup.Errors));
        Assert.Contains("sha256 ", backup.Output, StringComparison.Ordinal);
        Assert.Equal(0, (await Run(_folder, "check-store")).Code);
        Assert.Equal(0, (await Run(_folder, "openapi")).Code);
        Assert.Equal("ready",
            (await Run(_folder, new Dictionary<string, string> { ["ASPNETCORE_URLS"] = service.Address }, "healthcheck")).Output.Trim());

        service.Process.Kill();
        await service.Process.WaitForExitAsync(Studio.Cancellation);
        var restored = await Run(_folder, "restore", Path.Combine(_folder, "b.db"));
        Assert.Equal((0, ""), (restored.Code, restored.Errors));
        Assert.Contains(Db + ".replaced-", restored.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nowhere", "\"nowhere\", which is not an address")]
    [InlineData("https://127.0.0.1:5443", "a proxy before the service must provide TLS")]
    [InlineData("http://127.0.0.1:99999", "the highest port is 65535")]
    [InlineData("http://192.0.2.1:5080", "http://192.0.2.1:5080: this machine has no such address")] // RFC 5737: for documentation, nobody's
    public async Task An_address_that_cannot_be_listened_at_is_reported_in_one_sentence(string address, string told)
    {
        var refused = await Run(_folder, new Dictionary<string, string> { ["ASPNETCORE_URLS"] = address });
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, told, "ASPNETCORE_URLS");
    }

    [Fact]
    public async Task An_address_where_something_already_listens_is_reported_in_one_sentence()
    {
        using var service = Start(_folder, new Dictionary<string, string>());
        await Ready(service);
        var refused = await Run(Path.Combine(_folder, "other"), new Dictionary<string, string> { ["ASPNETCORE_URLS"] = service.Address });
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, $"{service.Address}: something already listens there", "ASPNETCORE_URLS");
    }

    [Fact]
    public async Task Verbs_report_their_usage_and_what_is_wrong()
    {
        foreach (var (arguments, told) in new (string[], string)[]
        {
            (["backup"], "backup FILE"), (["restore", "a", "b"], "restore FILE"), (["forget", "design"], "forget KIND KEY"), (["forget", "key", "a"],
                "profile, design, channel, price"),
            (["check-store"], Db), (["backup", "x.db"], Db), (["restore", "/nowhere/x.db"], "/nowhere/x.db"), (["forget", "design", "a"], Db),
        })
        {
            var refused = await Run(_folder, arguments);
            Assert.Equal((1, ""), (refused.Code, refused.Output));
            OneSentence(refused.Errors, told);
        }
    }

    [Fact]
    public async Task A_check_finds_a_document_that_no_longer_reads_and_forgetting_warns_of_backups()
    {
        using (var store = new Store(Engine.InFile(Db, TimeProvider.System), TimeProvider.System))
        {
            store.Open();
            store.Write("test", writing => writing.Save("design", "a", """{"making":7}""", []));
            store.Write("test", writing => writing.Delete("design", "a"));
        }

        var check = await Run(_folder, "check-store");
        Assert.Equal(1, check.Code);
        Assert.Contains("design a, revision 1: #/making: ", check.Output, StringComparison.Ordinal);
        var forgotten = await Run(_folder, "forget", "design", "a");
        Assert.Equal((0, ""), (forgotten.Code, forgotten.Errors));
        Assert.Contains("2 revisions", forgotten.Output, StringComparison.Ordinal);
        Assert.Contains("Warning: backups", forgotten.Output, StringComparison.Ordinal);
        var well = await Run(_folder, "check-store");
        Assert.Equal(0, well.Code);
        Assert.Contains("0 documents, 0 revisions, position 0", well.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_not_a_store_stops_the_start_and_stays_unchanged()
    {
        using (var store = new Store(Engine.InFile(Db, TimeProvider.System), TimeProvider.System))
        {
            store.Open();
            for (var i = 0; i < 40; i++)
                store.Write("test", writing => writing.Save("design", "a", $"\"{new string('x', 3000)}\"", []));
        }

        var whole = await File.ReadAllBytesAsync(Db, Studio.Cancellation);
        foreach (var bytes in new[]
        {
            whole[..(whole.Length / 2)],
            whole[..4096],
            whole[..50],
            "a letter to the bank, which is no store at all"u8.ToArray(),
        })
        {
            await File.WriteAllBytesAsync(Db, bytes, Studio.Cancellation);
            var refused = await Run(_folder);
            Assert.Equal(1, refused.Code);
            OneSentence(refused.Errors, Db, $"user {Environment.UserName}", "is not a whole store", "restore FILE");
            Assert.Equal(bytes, await File.ReadAllBytesAsync(Db, Studio.Cancellation));
        }

        File.Delete(Db);
        Execute("CREATE TABLE letters (x); PRAGMA user_version = 1");
        OneSentence((await Run(_folder)).Errors, Db, "is not a whole store");
    }

    [Fact]
    public async Task A_store_that_another_program_holds_stops_the_start()
    {
        using (var store = new Store(Engine.InFile(Db, TimeProvider.System), TimeProvider.System))
            store.Open();
        await using var browser = new SqliteConnection($"Data Source={Db};Pooling=False");
        await browser.OpenAsync(Studio.Cancellation);
        await using var hold = browser.CreateCommand();
        hold.CommandText = "PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE";
        await hold.ExecuteNonQueryAsync(Studio.Cancellation);
        var refused = await Run(_folder);
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, Db, "is locked by another program", $"user {Environment.UserName}", "start again");
    }

    [Fact]
    public async Task A_key_for_one_that_was_lost_is_in_a_file_for_its_owner_only_and_opens()
    {
        OneSentence((await Run(_folder, "new-admin-key")).Errors, Db, "no store");
        using (var service = Start(_folder, new Dictionary<string, string>()))
        {
            await Ready(service);
            OneSentence((await Run(_folder, "new-admin-key")).Errors, $"pid {service.Process.Id}", "Stop it first");
            Assert.Equal(0, await Terminate(service));
        }

        var made = await Run(_folder, "new-admin-key");
        Assert.Equal((0, ""), (made.Code, made.Errors));
        var file = Assert.Single(Directory.GetFiles(_folder, "admin-key-*"));
        Assert.Contains(file, made.Output, StringComparison.Ordinal);
        var key = (await File.ReadAllTextAsync(file, Studio.Cancellation)).Trim();
        Assert.DoesNotContain(key, made.Output, StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        using var again = Start(_folder, new Dictionary<string, string>());
        await Ready(again);
        using var client = new HttpClient();
        client.DefaultRequestHeaders.Authorization = new("Bearer", key);
        var keys = await client.GetStringAsync(new Uri(again.Address + "/v1/keys"), Studio.Cancellation);
        foreach (var name in new[] { "first-admin-key", Path.GetFileName(file) })
            Assert.Contains($"\"name\":\"{name}\"", keys, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_newer_schema_stops_the_start()
    {
        using (var store = new Store(Engine.InFile(Db, TimeProvider.System), TimeProvider.System))
            store.Open();
        Execute($"PRAGMA user_version = {Migrations.Newest + 1}");
        var refused = await Run(_folder);
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, Db, $"has schema {Migrations.Newest + 1}", $"user {Environment.UserName}", "Start the newer program");
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_is_reported_with_the_command_that_fixes_it()
    {
        if (!OperatingSystem.IsLinux())
            return;
        // Root may write nearly everywhere, but not into the kernel's own tree.
        var isRoot = Environment.UserName == "root";
        var folder = isRoot ? "/sys/kernel" : _folder;
        if (!isRoot)
            File.SetUnixFileMode(_folder, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        try
        {
            var refused = await Run(folder);
            Assert.Equal(1, refused.Code);
            OneSentence(refused.Errors, folder, $"user {Environment.UserName} (uid ", "belongs to uid ", "mode 0", "chown -R ", $" {folder} ");
            var below = await Run(folder + "/below");
            Assert.Equal(1, below.Code);
            OneSentence(below.Errors, $"{folder}/below (its parent {folder} is there)", $"mkdir -p {folder}/below && chown -R ");
        }
        finally
        {
            if (!isRoot)
                File.SetUnixFileMode(_folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    [Fact]
    public async Task A_user_without_a_name_is_named_by_number()
    {
        var program = Path.Combine(AppContext.BaseDirectory, "PriceFloor.Api.dll");
        if (Environment.UserName != "root" || !File.Exists("/usr/bin/setpriv") || (await AsNobody("test", "-r", program)).Code != 0)
            Assert.Skip("Only root can be somebody else, and only where the program is not closed to others.");
        var refused = await AsNobody("dotnet", program); // a container's user often has no name
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, $"{_folder} cannot be written by user (uid 51654, gid 51654): ", "belongs to uid 0, gid 0, mode 0700",
            $"Run: chown -R 51654:51654 {_folder} && chmod u+rwx {_folder}, or");
    }

    private async Task<Ended> AsNobody(params string[] words)
    {
        var start = new ProcessStartInfo("setpriv", ["--reuid=51654", "--regid=51654", "--clear-groups", .. words])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        start.Environment["PRICEFLOOR_DATA"] = _folder;
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(Studio.Cancellation),
            process.StandardError.ReadToEndAsync(Studio.Cancellation));
        await process.WaitForExitAsync(Studio.Cancellation);
        return new Ended(process.ExitCode, await output, await errors);
    }

    private void Execute(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Db};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
