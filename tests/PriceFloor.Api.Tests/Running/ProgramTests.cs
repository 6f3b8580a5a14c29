using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The real program as a process: its verbs, and the lock between two.</summary>
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
        using (var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System))
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
}
