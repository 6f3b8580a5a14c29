using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The first key of an empty store: the operator's own, or one in a file for its owner only.</summary>
public sealed class FirstKeyTests
{
    [Theory]
    [InlineData(31)]
    [InlineData(201)]
    public void A_key_that_is_too_short_or_too_long_stops_the_start(int length) => _ = Refused(KeyOf(length));

    [Theory]
    [InlineData("a key with spaces that is long enough to count")]
    [InlineData("a-key-with-an-accent-that-is-long-enough-é")]
    [InlineData("a-key-with-a-tab-that-is-long-enough-to-be\t")]
    public void A_key_with_invisible_characters_stops_the_start(string key) => _ = Refused(key);

    [Theory]
    [InlineData("kkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkk", 1)]
    [InlineData("abababababababababababababababab", 2)]
    [InlineData("abcdefgabcdefgabcdefgabcdefgabcdefg", 7)]
    public async Task A_key_of_few_different_characters_stops_the_start_from_the_environment_and_from_a_file(string key, int different)
    {
        var told =
            FormattableString.Invariant($"has only {different} different characters; a key of 32 to 200 visible ASCII characters needs at least 8");
        Assert.Contains(told, Refused(key), StringComparison.Ordinal);
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, key + "\n", Studio.Cancellation);
        var fault = Assert.Throws<SettingsException>(() => StartWith("PRICEFLOOR_ADMIN_KEY_FILE", file));
        File.Delete(file);
        Assert.StartsWith($"PRICEFLOOR_ADMIN_KEY_FILE {told}", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(key, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_of_just_eight_different_characters_is_taken() => StartWith("PRICEFLOOR_ADMIN_KEY", "abcdefghabcdefghabcdefghabcdefgh");

    [Theory]
    [InlineData(32)]
    [InlineData(200)]
    public async Task A_key_of_the_operators_choice_opens(int length)
    {
        var key = KeyOf(length);
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_ADMIN_KEY", key));
        Assert.Equal(200, (await studio.Get("/v1/keys", studio.ClientWith(key))).Status);
        Assert.False(File.Exists(Path.Combine(studio.Folder, "first-admin-key")));
    }

    [Fact]
    public async Task A_key_can_come_from_a_file()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-key-");
        var file = Path.Combine(folder.FullName, "key");
        await File.WriteAllTextAsync(file, KeyOf(40) + "\n", Studio.Cancellation);
        await using (var studio =
                new Studio(configure: host => host.UseSetting("PRICEFLOOR_ADMIN_KEY", "").UseSetting("PRICEFLOOR_ADMIN_KEY_FILE", file)))
            Assert.Equal(200, (await studio.Get("/v1/keys", studio.ClientWith(KeyOf(40)))).Status);
        folder.Delete(recursive: true);
    }

    [Fact]
    public void A_secret_that_is_set_twice_is_refused_because_it_is_unclear_which_counts()
    {
        var both = new Dictionary<string, string?> { ["PRICEFLOOR_ADMIN_KEY"] = KeyOf(40), ["PRICEFLOOR_ADMIN_KEY_FILE"] = "/run/secrets/key" };
        var fault =
            Assert.Throws<SettingsException>(() => Settings.Read(new ConfigurationBuilder().AddInMemoryCollection(both).Build(), demo: false));
        Assert.StartsWith("PRICEFLOOR_ADMIN_KEY and PRICEFLOOR_ADMIN_KEY_FILE are both set", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(KeyOf(40), fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_the_operators_fault()
    {
        var missing = Path.Combine(Path.GetTempPath(), "pricefloor-no-such-key");
        var fault = Record.Exception(() => StartWith("PRICEFLOOR_ADMIN_KEY_FILE", missing));
        Assert.NotNull(fault);
        Assert.True(Starting.IsOperatorsFault(fault), fault.GetType().Name);
        Assert.Contains(missing, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_key_file_that_lies_there_already_is_closed_to_others_before_the_new_key_is_in_it()
    {
        if (OperatingSystem.IsWindows())
            return;
        string? old = null;
        await using var studio = new Studio(configure: host =>
        {
            old = Path.Combine(host.GetSetting("PRICEFLOOR_DATA")!, "first-admin-key");
            File.WriteAllText(old, "of an earlier store\n");
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(old, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
            host.UseSetting("PRICEFLOOR_ADMIN_KEY", "");
        });
        Assert.Equal(200, (await studio.Get("/v1/keys", studio.ClientWith((await File.ReadAllTextAsync(old!, Studio.Cancellation)).Trim()))).Status);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(old!));
    }

    [Fact]
    public async Task Another_key_in_the_environment_changes_nothing_in_a_store_that_has_one()
    {
        var first = new Studio();
        await first.Has("/v1/channels/web", Sample.Shop);
        await using var again = await first.Restarted(host => host.UseSetting("PRICEFLOOR_ADMIN_KEY", KeyOf(40)));
        (await again.Get("/v1/keys", again.ClientWith(KeyOf(40)))).IsProblem(401, "no-key");
        Assert.Equal("web",
            (await again.Get("/v1/channels", again.ClientWith(Studio.AdminKey))).Json.GetProperty("items")[0].GetProperty("key").GetString());
    }

    /// <summary>Different characters one after another.</summary>
    private static string KeyOf(int length) => string.Concat(Enumerable.Range(0, length).Select(i => (char)('a' + (i % 26))));

    private static string Refused(string key)
    {
        var fault = Assert.IsType<SettingsException>(Record.Exception(() => StartWith("PRICEFLOOR_ADMIN_KEY", key)));
        Assert.Contains("PRICEFLOOR_ADMIN_KEY", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(key, fault.Message, StringComparison.Ordinal);
        return fault.Message;
    }

    private static void StartWith(string name, string value) => Settings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { [name] = value }).Build(), demo: false);
}
