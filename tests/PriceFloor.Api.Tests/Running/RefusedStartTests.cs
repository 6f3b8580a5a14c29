using System.Diagnostics;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The real program as a process: starts that fail, each with one sentence.</summary>
public sealed class RefusedStartTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-refused-").FullName;

    private string Db => Path.Combine(_folder, "pricefloor.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

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
    public async Task A_file_that_is_not_a_store_stops_the_start_and_stays_unchanged()
    {
        using (var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System))
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
        using (var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System))
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
    public async Task A_newer_schema_stops_the_start()
    {
        using (var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System))
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
