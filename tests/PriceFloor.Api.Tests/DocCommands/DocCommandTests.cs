using System.Diagnostics;
using System.Net.Http.Headers;
using PriceFloor.Api.Running;
using PriceFloor.Api.Tests.Conventions;
using PriceFloor.Storage;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>Every command that a page gives its reader is tried; `.ci/examples` sends the requests.</summary>
public sealed class DocCommandTests
{
    private const string Source = "bench-book";

    /// <summary>Blocks that nothing runs, by their first line, and why.</summary>
    private static readonly Dictionary<string, string> s_notRun = new()
    {
        ["src/PriceFloor.Pricing/   pure: no IO, no clock, no logging, no ASP.NET. A folder is a namespace, and no two folders need each other"] =
            "A map, no command.",
        ["{\"symbol\":\"benchMustEarn\",\"label\":\"what bench time must recover\",\"formula\":\"max(0, "
            + "allocated + profitBeforeTax - taxableIncome)\",\"value\":60000}"] = "A line of an answer, no command.",
        ["kiota generate --language Python --openapi openapi/pricefloor.v1.yaml --output made --class-name PriceFloorClient"] =
            "`.ci/clients` makes and runs the C# client so; the Python client needs packages that are not at hand.",
        ["dotnet run -c Release --project tests/PriceFloor.Benchmarks -- all"] =
            "It takes ten minutes of a quiet machine; that the verb is there is looked up below.",
        ["ASPNETCORE_URLS=http://127.0.0.1:5080;http://10.8.0.2:5080"] = "The second address is one of a tunnel that is not here.",
        ["dotnet publish src/PriceFloor.Api --configuration Release --use-current-runtime --self-contained false --output /opt/pricefloor"] =
            "It makes a user and a service of this machine; ServiceUnitTests holds it against the unit, which `.ci/unit` has systemd read.",
        ["sudo -u pricefloor env PRICEFLOOR_DATA=/var/lib/pricefloor dotnet /opt/pricefloor/PriceFloor.Api.dll check-store"] =
            "There is no such user here; ServiceUnitTests holds it against the unit.",
        ["sha256sum --check --ignore-missing SHA256SUMS.txt"] =
            "`.ci/downloads` makes the files, checks their sums, and starts the one of this machine under another name.",
        ["createuser pricefloor_owner --pwprompt"] = "It makes roles of a server that is not here; PostgresCluster makes the same ones.",
        ["location /pricefloor/ {"] = "Another program's settings; SubPathTests sends what it would send.",
    };

    /// <summary>Commands of other programs in a sentence, and where they are tried.</summary>
    private static readonly string[] s_ofOthers = ["systemctl stop", "docker stop", "sha256sum --check", "dotnet run check-shop.cs",
        "dotnet test", "dotnet format"];

    [Fact]
    public void Every_block_is_run_or_it_is_said_why_not()
    {
        Assert.True(DocPages.Blocks.Count > 40);
        var notRun = DocPages.Blocks.Where(block => !IsRun(block)).Select(block => block.FirstLine).ToList();
        Assert.Equal(s_notRun.Keys.Order(StringComparer.Ordinal), notRun.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_script_and_project_that_a_page_starts_is_there()
    {
        var started = DocPages.Commands.Where(line => line.StartsWith(".ci/", StringComparison.Ordinal)
            || line.StartsWith("dotnet ", StringComparison.Ordinal)
            || (line.StartsWith("tests/", StringComparison.Ordinal) && line.Contains(".sh", StringComparison.Ordinal))).ToList();
        Assert.True(started.Count > 10);
        foreach (var line in started.Where(line => !s_ofOthers.Contains(line)
            && !line.StartsWith("dotnet PriceFloor.Api.dll", StringComparison.Ordinal)))
        {
            var words = line.Split(' ');
            var path = words is ["dotnet", "publish", ..] ? words[2] : words[0] == "dotnet" ? words[Array.IndexOf(words, "--project") + 1] : words[0];
            Assert.True(Path.Exists(Repository.File(path)), line);
            if (path == "tests/PriceFloor.Benchmarks")
                Assert.Contains($"\"{words[Array.IndexOf(words, "--") + 1]}\"",
                    File.ReadAllText(Repository.File("tests/PriceFloor.Benchmarks/Program.cs")), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Every_line_that_starts_our_program_does_its_work()
    {
        var (folder, stick) = (Directory.CreateTempSubdirectory("pricefloor-docs-"), Directory.CreateTempSubdirectory("pricefloor-stick-"));
        try
        {
            var lines = DocPages.Commands.Select(ProgramLine.Of).OfType<ProgramLine>().ToList();
            Assert.Equal(ProgramLine.Commands.Order(StringComparer.Ordinal),
                lines.Select(line => line.Verb).OfType<string>().Distinct().Order(StringComparer.Ordinal));
            string[] Placed(ProgramLine line) => [.. line.Arguments.Select(argument => argument switch
            {
                "FILE" => Path.Combine(stick.FullName, "a-file.db"),
                "KIND" => "profile",
                "KEY" => "gone",
                "SOURCE" => Source,
                "SHEET" or "prices.csv" => Path.Combine(stick.FullName, "prices.csv"),
                "SKU" => "RB-014",
                "CHANNEL" => "web",
                _ => argument.Replace($"{ContainerFiles.Volume}/", folder.FullName + "/", StringComparison.Ordinal)
                    .Replace("/mnt/stick/", stick.FullName + "/", StringComparison.Ordinal),
            })];
            using (var service = Start(folder.FullName, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }))
            {
                await Ready(service);
                await HasAShopAndADeletedProfile(service.Address);
                await File.WriteAllTextAsync(Path.Combine(stick.FullName, "prices.csv"), "sku,channel,price\nRB-014,web,900\n", Studio.Cancellation);
                foreach (var line in lines.Where(line => line.RunsBeside))
                    await Works(folder, line, Placed(line), service.Address);
                Assert.Equal(0, await Terminate(service));
            }

            foreach (var line in lines.Where(line => !line.Serves && !line.RunsBeside && line.Verb != CopyCommand.Name))
            {
                if (line.Arguments.Contains("SOURCE"))
                    await HasALineOfTheLog(folder); // a page says it twice, and a backup without it may have been restored
                await Works(folder, line, Placed(line));
            }

            await Sums(stick);
            foreach (var line in lines.Where(line => line.Serves))
                await Serves(stick.CreateSubdirectory(Guid.NewGuid().ToString("N")), line);
        }
        finally
        {
            folder.Delete(recursive: true);
            stick.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Every_line_that_copies_a_store_does_its_work()
    {
        var database = PostgresCluster.One.NewDatabase();
        var (folder, stick) = (Directory.CreateTempSubdirectory("pricefloor-docs-"), Directory.CreateTempSubdirectory("pricefloor-stick-"));
        await HasALineOfTheLog(folder);
        var lines = DocPages.Commands.Select(ProgramLine.Of).OfType<ProgramLine>()
            .Where(line => line.Verb == CopyCommand.Name && line.Arguments.Count > 2).DistinctBy(line => line.Arguments[1]).ToList();
        Assert.Equal(["--from", "--to"], lines.Select(line => line.Arguments[1])); // in this order, so the second has something to copy
        foreach (var line in lines)
        {
            var ended = await Run(stick.FullName, new Dictionary<string, string>
            {
                ["PRICEFLOOR_STORE"] = PostgresCluster.One.ConnectionString(database),
            }, [.. line.Arguments.Take(2), line.Arguments[1] == "--from" ? folder.FullName : Path.Combine(stick.FullName, "copy")]);
            Assert.True((ended.Code, ended.Errors) is (0, ""), $"{line.Line}: {ended.Errors}{ended.Output}");
        }

        Assert.True(File.Exists(Path.Combine(stick.FullName, "copy", "pricefloor.db")));
        PostgresCluster.One.Drop(database);
        folder.Delete(recursive: true);
        stick.Delete(recursive: true);
    }

    /// <summary>
    /// Requests run in `.ci/examples`, with the JSON after them as their answer; the program's and docker's lines are tried here and in the
    /// neighbouring tests.
    /// </summary>
    private static bool IsRun(DocPages.Block block) => block.Language switch
    {
        "sh" => block.Text.Split('\n').Any(line => line.StartsWith("curl ", StringComparison.Ordinal)) && IsReadByExamples(block.Page),
        "json" => IsReadByExamples(block.Page),
        _ => block.Text.Replace("\\\n", " ", StringComparison.Ordinal).Split('\n').All(line => ProgramLine.Of(line) is not null
            || line.StartsWith("docker ", StringComparison.Ordinal) || s_ofOthers.Contains(line) || IsCopy(line)),
    };

    private static bool IsReadByExamples(string page) => page is "README.md" or "docs/scripts/sheet.md"
        || (page.StartsWith("docs/", StringComparison.Ordinal) && page.Count(letter => letter == '/') == 1);

    private static bool IsCopy(string line) =>
        line.Split(' ') is ["cp", var from, var to] && File.Exists(Repository.File(from)) && File.Exists(Repository.File(to));

    private static async Task HasAShopAndADeletedProfile(string address)
    {
        using var client = new HttpClient { BaseAddress = new Uri(address) };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", Studio.AdminKey);
        async Task<int> Put(string path, string json)
        {
            using var body = new StringContent(json, new MediaTypeHeaderValue("application/json"));
            using var put = await client.PutAsync(new Uri(path, UriKind.Relative), body, Studio.Cancellation);
            return (int)put.StatusCode;
        }

        foreach (var (path, json) in new[]
        {
            ("/v1/profiles/gone", Sample.SmallProfile), ("/v1/profiles/main", Sample.SmallProfile), ("/v1/designs/RB-014", Sample.Pendant),
            ("/v1/channels/web", Sample.Shop),
        })
            Assert.Equal(201, await Put(path, json));
        using var deleted = await client.DeleteAsync(new Uri("/v1/profiles/gone", UriKind.Relative), Studio.Cancellation);
        Assert.Equal(204, (int)deleted.StatusCode);
    }

    private static async Task HasALineOfTheLog(DirectoryInfo folder)
    {
        using var store = new Store(new SqliteEngine(Path.Combine(folder.FullName, "pricefloor.db"), TimeProvider.System), TimeProvider.System);
        store.Open();
        var marks = await store.ReadAsync(snapshot => snapshot.Marks());
        var line = new BenchLine { Source = Source, Ref = marks.OfRef(Source, "1"), Minutes = 6000 };
        await store.AppendAsync("test", new LogAppend<BenchLine> { Source = Source, Lines = [line] }, _ => ValueTask.CompletedTask);
    }

    private static async Task Works(DirectoryInfo folder, ProgramLine line, string[] arguments, string? address = null)
    {
        var ended = await Run(folder.FullName, address is null ? [] : new Dictionary<string, string> { ["ASPNETCORE_URLS"] = address }, arguments);
        Assert.True((ended.Code, ended.Errors) is (0, "") && ended.Output.Length > 0,
            $"{line.Line}: ended with {ended.Code}: {ended.Errors}{ended.Output}");
    }

    private static async Task Serves(DirectoryInfo folder, ProgramLine line)
    {
        using var service = Start(folder.FullName, [], [.. line.Arguments]);
        var output = service.Process.StandardOutput.ReadToEndAsync(Studio.Cancellation);
        await Ready(service);
        Assert.Equal(0, await Terminate(service));
        Assert.Equal(line.Arguments.Contains("--demo") || line.Verb == "demo", (await output).Contains("curl ", StringComparison.Ordinal));
    }

    /// <summary>The file beside each backup can be read by `sha256sum --check`, if that is installed.</summary>
    private static async Task Sums(DirectoryInfo folder)
    {
        var sums = folder.EnumerateFiles("*.sha256").ToList();
        Assert.True(sums.Count >= 2);
        if (!File.Exists("/usr/bin/sha256sum"))
            return;
        using var check = Process.Start(
            new ProcessStartInfo("sha256sum", ["--check", "--quiet", .. sums.Select(sum => sum.Name)]) { WorkingDirectory = folder.FullName })!;
        await check.WaitForExitAsync(Studio.Cancellation);
        Assert.Equal(0, check.ExitCode);
    }
}
