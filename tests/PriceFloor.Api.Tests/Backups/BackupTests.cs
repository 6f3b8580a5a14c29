using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Backups;

/// <summary>Backups by request and by schedule.</summary>
public sealed class BackupTests
{
    private static readonly int[] s_stored = [200, 201];

    private static string FolderOf(Studio studio) => Path.Combine(studio.Folder, "backups");

    private static string[] Names(Studio studio) => !Directory.Exists(FolderOf(studio)) ? [] :
        [.. Directory.GetFiles(FolderOf(studio), "*.db").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Fact]
    public async Task A_backup_is_named_by_time_and_is_what_the_answer_says()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = await studio.Send("POST", "/v1/backups", null);
        Assert.Equal((201, "no-store"), (answer.Status, answer["Cache-Control"]));
        Assert.Equal(["name", "bytes", "sha256", "schema"], answer.Json.EnumerateObject().Select(property => property.Name));
        var file = Path.Combine(FolderOf(studio), answer.Json.GetProperty("name").GetString()!);
        Assert.Equal("pricefloor-20270102T090000Z.db", Path.GetFileName(file));
        var bytes = await File.ReadAllBytesAsync(file, Studio.Cancellation);
        Assert.Equal((bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)), Migrations.Newest),
            (answer.Json.GetProperty("bytes").GetInt32(), answer.Json.GetProperty("sha256").GetString(),
                answer.Json.GetProperty("schema").GetInt32()));
        Assert.Equal("pricefloor-20270102T090000Z-2.db", (await studio.Send("POST", "/v1/backups", null)).Json.GetProperty("name").GetString());
    }

    [Fact]
    public async Task Writes_go_on_while_backups_are_made()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var writes = Task.WhenAll(Enumerable.Range(1, 60).Select(i => studio.Put("/v1/designs/RB-014/prices/web", $$"""{"price":{{i}}}""")));
        var backups = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => studio.Send("POST", "/v1/backups", null)));
        Assert.All(await writes, answer => Assert.Contains(answer.Status, s_stored));
        Assert.Equal(4, backups.Select(answer => answer.Json.GetProperty("name").GetString()).Distinct().Count());
        foreach (var name in Names(studio))
            Assert.Empty(StoreCheck.Of(Path.Combine(FolderOf(studio), name), (_, _) => null).Faults);
    }

    [Fact]
    public async Task A_backup_that_cannot_be_written_is_reported_as_busy()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await File.WriteAllTextAsync(FolderOf(studio), "in the way", Studio.Cancellation);
        Assert.DoesNotContain(studio.Folder, (await studio.Send("POST", "/v1/backups", null)).IsProblem(503, "busy").Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_schedule_makes_one_at_once_and_one_every_so_often_and_keeps_the_newest()
    {
        await using var studio =
            new Studio(configure: host => host.UseSetting("PRICEFLOOR_BACKUP_EVERY_HOURS", "12").UseSetting("PRICEFLOOR_BACKUPS_KEPT", "2"));
        _ = studio.ClientWith(null);
        await Becomes(studio, "pricefloor-20270102T090000Z.db");
        await File.WriteAllTextAsync(Path.Combine(FolderOf(studio), "pricefloor-mine.db"), "of the operator", Studio.Cancellation);
        await After(studio, 12, "pricefloor-20270102T090000Z.db", "pricefloor-20270102T210000Z.db", "pricefloor-mine.db");
        await After(studio, 12, "pricefloor-20270102T210000Z.db", "pricefloor-20270103T090000Z.db", "pricefloor-mine.db");
        Assert.Equal(2, Directory.GetFiles(FolderOf(studio), "*.sha256").Length);

        var again = await studio.Restarted(host => host.UseSetting("PRICEFLOOR_BACKUP_EVERY_HOURS", "12").UseSetting("PRICEFLOOR_BACKUPS_KEPT", "2"));
        await Task.Delay(100, Studio.Cancellation);
        Assert.Equal(3, Names(again).Length); // the newest is not yet 12 hours old
        await After(again, 12, "pricefloor-20270103T090000Z.db", "pricefloor-20270103T210000Z.db", "pricefloor-mine.db");
        await again.Stopped();
    }

    [Fact]
    public async Task A_backup_made_after_the_clock_was_set_back_is_still_the_newest()
    {
        await using var studio = new Studio();
        Assert.Equal("pricefloor-20270102T090000Z.db", (await studio.Send("POST", "/v1/backups", null)).Json.GetProperty("name").GetString());
        studio.Clock.AdjustTime(studio.Clock.GetUtcNow().AddDays(-7));
        Assert.Equal("pricefloor-20270102T090000Z-2.db", (await studio.Send("POST", "/v1/backups", null)).Json.GetProperty("name").GetString());
    }

    [Fact]
    public async Task Without_a_schedule_none_is_made()
    {
        await using var studio = new Studio();
        _ = studio.ClientWith(null);
        studio.Clock.Advance(TimeSpan.FromDays(3));
        await Task.Delay(100, Studio.Cancellation);
        Assert.Empty(Names(studio));
    }

    [Theory]
    [InlineData("PRICEFLOOR_BACKUP_EVERY_HOURS", "-1")]
    [InlineData("PRICEFLOOR_BACKUP_EVERY_HOURS", "daily")]
    [InlineData("PRICEFLOOR_BACKUPS_KEPT", "0")]
    public void A_schedule_that_cannot_be_is_refused_by_name(string name, string value)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { [name] = value }).Build();
        Assert.Contains(name, Assert.Throws<SettingsException>(() => Settings.Read(configuration, demo: false)).Message, StringComparison.Ordinal);
    }

    private static async Task After(Studio studio, int hours, params string[] names)
    {
        for (var minutes = 0; minutes < hours * 60; minutes += 30)
        {
            studio.Clock.Advance(TimeSpan.FromMinutes(30));
            if (minutes >= (hours * 60) - 60)
                await Task.Delay(50, Studio.Cancellation);
        }

        await Becomes(studio, names);
    }

    private static async Task Becomes(Studio studio, params string[] names)
    {
        for (var i = 0; i < 100 && !(Names(studio).SequenceEqual(names) && Directory.GetFiles(FolderOf(studio), "*.sha256").Length == names.Count(
                name => !name.EndsWith("mine.db", StringComparison.Ordinal))); i++)
            await Task.Delay(50, Studio.Cancellation);
        Assert.Equal(names, Names(studio));
        await Task.Delay(50, Studio.Cancellation); // the schedule sets its next alarm
    }
}
