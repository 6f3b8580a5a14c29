using Microsoft.AspNetCore.Hosting;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

public sealed class StartTests
{
    [Fact]
    public async Task Without_a_chosen_key_the_first_one_is_written_for_its_owner_only()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_ADMIN_KEY", ""));
        var path = Path.Combine(studio.Folder, "first-admin-key");
        _ = studio.ClientWith(null);
        var key = (await File.ReadAllTextAsync(path, Studio.Cancellation)).Trim();
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        Assert.Equal(200, (await studio.Get("/v1/keys", studio.ClientWith(key))).Status);
    }

    [Theory]
    [InlineData("PRICEFLOOR_ADMIN_KEY", "too short")]
    [InlineData("PRICEFLOOR_TRUSTED_PROXIES", "proxy.local")]
    [InlineData("PRICEFLOOR_TRUSTED_PROXIES", "10.0.0.0/33")]
    [InlineData("PRICEFLOOR_TRUSTED_PROXIES", "10.0.0.0/")]
    [InlineData("PRICEFLOOR_TRUSTED_PROXIES", "10.0.0.0/8/8")]
    [InlineData("PRICEFLOOR_TRUSTED_PROXIES", "2001:db8::/129")]
    [InlineData("PRICEFLOOR_REQUESTS_PER_MINUTE", "0")]
    [InlineData("PRICEFLOOR_PATH_BASE", "below")]
    [InlineData("PRICEFLOOR_METRICS", "yes")]
    public void A_setting_that_cannot_be_is_refused_by_name(string name, string value)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { [name] = value }).Build();
        Assert.Contains(name, Assert.Throws<SettingsException>(() => Settings.Read(configuration, demo: false)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("10.1.2.3/8", "10.0.0.0/8")]
    [InlineData("192.168.1.5/31", "192.168.1.4/31")]
    [InlineData("2001:db8::1/64", "2001:db8::/64")]
    public void An_address_with_a_length_is_refused_with_the_network_that_was_meant(string text, string network)
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["PRICEFLOOR_TRUSTED_PROXIES"] = text }).Build();
        Assert.Equal($"PRICEFLOOR_TRUSTED_PROXIES: \"{text}\" is an address within a network; write the network as {network}.",
            Assert.Throws<SettingsException>(() => Settings.Read(configuration, demo: false)).Message);
    }

    [Fact]
    public async Task It_is_alive_and_ready_without_a_key()
    {
        await using var studio = new Studio();
        var nobody = studio.ClientWith(null);
        Assert.Equal("""{"status":"live"}""", (await studio.Get("/health/live", nobody)).Text);
        Assert.Equal("""{"status":"ready"}""", (await studio.Get("/health/ready", nobody)).Text);
    }

    [Fact]
    public async Task Asking_whether_it_is_ready_writes_once_in_a_while_however_often_it_is_asked()
    {
        await using var studio = new Studio();
        Assert.Equal(200, (await studio.Get("/health/ready")).Status);
        await using var other = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False");
        await other.OpenAsync(Studio.Cancellation);
        await using var hold = other.BeginTransaction(deferred: false);
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(200, (await studio.Get("/health/ready")).Status); // of a second ago
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        (await studio.Get("/health/ready")).IsProblem(503, "busy"); // now it is tried
    }

    [Fact]
    public async Task It_is_not_ready_from_the_moment_that_a_write_is_refused_and_ready_again_once_one_is_kept()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        Assert.Equal(200, (await studio.Get("/health/ready")).Status);
        await using (var other = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False"))
        {
            await other.OpenAsync(Studio.Cancellation);
            await using var hold = other.BeginTransaction(deferred: false);
            (await studio.Put("/v1/profiles/other", Sample.SmallProfile)).IsProblem(503, "busy");
            (await studio.Get("/health/ready")).IsProblem(503, "busy"); // the clock stands still: the result of a moment ago no longer counts
        }

        Assert.Equal(201, (await studio.Put("/v1/profiles/other", Sample.SmallProfile)).Status);
        Assert.Equal(200, (await studio.Get("/health/ready")).Status);
    }

    [Fact]
    public async Task The_waiting_files_of_a_killed_service_are_deleted()
    {
        await using var studio =
            new Studio(configure: host => File.WriteAllText(Path.Combine(host.GetSetting("PRICEFLOOR_DATA")!, "answer-0.tmp"), "half"));
        _ = studio.ClientWith(null);
        Assert.Empty(Directory.GetFiles(studio.Folder, "answer-*"));
    }

    [Fact]
    public async Task A_path_base_is_part_of_every_address_in_an_answer()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_PATH_BASE", "/pricefloor"));
        Assert.Equal("/pricefloor/v1/profiles/main", (await studio.Put("/pricefloor/v1/profiles/main", Sample.SmallProfile))["Location"]);
        Assert.Equal("/pricefloor/problems/not-found", (await studio.Get("/pricefloor/v1/profiles/nope")).Json.GetProperty("type").GetString());
    }
}
