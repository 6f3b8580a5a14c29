using System.Globalization;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// The systemd unit agrees with the program, with the compose file and with the commands in docs/running.md. `.ci/unit` has systemd read it.
/// </summary>
public sealed class ServiceUnitTests
{
    private static readonly ILookup<string, string> s_unit = File.ReadLines(Repository.File("docs/pricefloor.service"))
        .Where(line => line.Contains('=', StringComparison.Ordinal) && !line.StartsWith('#'))
        .Select(line => line.Split('=', 2)).ToLookup(parts => parts[0], parts => parts[1]);

    private static readonly Dictionary<string, string> s_environment = s_unit["Environment"].Select(one => one.Split('=', 2))
        .ToDictionary(parts => parts[0], parts => parts[1]);

    private static readonly string s_running = File.ReadAllText(Repository.File("docs/running.md"));

    private static readonly string s_compose = File.ReadAllText(Repository.File("docs/compose.yaml"));

    [Fact]
    public void It_starts_our_program_on_its_own_folder_with_settings_that_are_there()
    {
        var program = Only("ExecStart").Split(' ');
        Assert.Equal("/usr/bin/dotnet", program[0]);
        Assert.Equal(Path.GetFileName(typeof(Program).Assembly.Location), Path.GetFileName(program[1]));
        Assert.Equal($"/var/lib/{Only("StateDirectory")}", s_environment["PRICEFLOOR_DATA"]);
        string[] ofOthers = ["ASPNETCORE_URLS", "DOTNET_EnableDiagnostics"];
        Assert.Empty(s_environment.Keys.Except(Settings.Names.Keys).Except(ofOthers));
        Assert.StartsWith("http://127.0.0.1:", s_environment["ASPNETCORE_URLS"], StringComparison.Ordinal);
    }

    [Fact]
    public void The_key_comes_as_a_credential_and_is_nowhere_else()
    {
        var name = Only("LoadCredential").Split(':')[0];
        Assert.Equal($"%d/{name}", s_environment["PRICEFLOOR_ADMIN_KEY_FILE"]);
        Assert.DoesNotContain("PRICEFLOOR_ADMIN_KEY", s_environment.Keys);
    }

    [Fact]
    public void Its_limits_are_those_of_the_compose_file()
    {
        Assert.Contains($"mem_limit: {Only("MemoryMax").ToLowerInvariant()}\n", s_compose, StringComparison.Ordinal);
        Assert.Contains($"pids_limit: {Only("TasksMax")}\n", s_compose, StringComparison.Ordinal);
        var processors = int.Parse(Only("CPUQuota").TrimEnd('%'), CultureInfo.InvariantCulture) / 100m;
        Assert.Contains($"cpus: \"{processors.ToString("0.0", CultureInfo.InvariantCulture)}\"\n", s_compose, StringComparison.Ordinal);
        foreach (var name in new[] { "PRICEFLOOR_BACKUP_EVERY_HOURS", "PRICEFLOOR_BACKUPS_KEPT" })
            Assert.Contains($"{name}: \"{s_environment[name]}\"\n", s_compose, StringComparison.Ordinal);
        Assert.True(int.Parse(Only("TimeoutStopSec"), CultureInfo.InvariantCulture) > 8, "docs/running.md: it ends within eight seconds.");
    }

    [Theory]
    [InlineData("ProtectSystem", "strict")]
    [InlineData("ProtectHome", "yes")]
    [InlineData("PrivateTmp", "yes")]
    [InlineData("NoNewPrivileges", "yes")]
    [InlineData("CapabilityBoundingSet", "")]
    [InlineData("StateDirectoryMode", "0700")]
    [InlineData("UMask", "0077")]
    [InlineData("LimitCORE", "0")]
    [InlineData("Restart", "on-failure")]
    public void It_keeps_the_promises_of_the_page(string name, string value) => Assert.Equal(value, Only(name));

    [Fact]
    public void What_the_page_has_its_reader_type_fits_the_unit()
    {
        var (program, user, data) = (Only("ExecStart").Split(' ')[1], Only("User"), s_environment["PRICEFLOOR_DATA"]);
        string[] typed =
        [
            $"--output {Path.GetDirectoryName(program)}\n",
            $"useradd --system --home-dir {data} --no-create-home --shell /usr/sbin/nologin {user}\n",
            $"install -D --mode 600 my-key {Only("LoadCredential").Split(':')[1]}\n",
            $"install --mode 644 docs/pricefloor.service /etc/systemd/system/{user}.service\n",
            $"sudo -u {user} env PRICEFLOOR_DATA={data} dotnet {program} {StoreCommands.CheckStore}\n",
        ];
        Assert.All(typed, line => Assert.Contains(line, s_running, StringComparison.Ordinal));
    }

    private static string Only(string name) => Assert.Single(s_unit[name]);
}
