using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>Disks that are full or read-only: reported, survived, and nothing is half done.</summary>
public sealed class DiskTests
{
    [Fact]
    public async Task A_full_disk_is_reported_to_writers_loses_nothing_and_writes_continue_when_there_is_room()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var filler = Path.Combine(disk.Path, "filler");
        await File.WriteAllBytesAsync(filler, new byte[300_000], Studio.Cancellation);
        var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_DATA", disk.Path));
        await studio.HasASmallShop();
        var written = 0;
        Answer refused;
        while ((refused = await studio.Put($"/v1/designs/D-{written + 1}", Sample.Pendant)).Status == 201)
            Assert.True(++written < 1000, "The disk never was full.");

        await FillUp(disk);
        Assert.True(written > 5);
        Assert.InRange(int.Parse(refused.IsProblem(503, "busy")["Retry-After"]!, CultureInfo.InvariantCulture), 1, 60);
        (await studio.Delete("/v1/designs/RB-014")).IsProblem(503, "busy");
        // a small write may still find the room that the refused one had taken
        for (var i = 0; i < 50
            && (refused = await studio.Post("/v1/keys", $$"""{"name":"another-{{i}}","scopes":["read"]}""")).Status == 201; i++) { }
        refused.IsProblem(503, "busy");
        (await studio.Send("POST", "/v1/backups", null)).IsProblem(503, "busy");
        (await studio.Get("/health/ready")).IsProblem(503, "busy");
        Assert.Equal(200, (await studio.Get("/health/live")).Status);
        (await studio.Get($"/v1/designs/D-{written + 1}")).IsProblem(404, "not-found");
        Assert.Equal("61.74", (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).Json.GetProperty("floorPrice").GetRawText());

        File.Delete(filler);
        File.Delete(Path.Combine(disk.Path, "rest"));
        Assert.Equal(201, (await studio.Put($"/v1/designs/D-{written + 1}", Sample.Pendant)).Status);
        Assert.Equal(200, (await studio.Get("/health/ready")).Status);
        Assert.Equal(written + 2, (await studio.Get("/v1/designs?limit=1000")).Json.GetProperty("items").GetArrayLength()); // and RB-014
        await studio.DisposeAsync();
        Assert.Empty(StoreCheck.Of(Path.Combine(disk.Path, "pricefloor.db"), (_, _) => null).Faults);
    }

    /// <summary>
    /// Writes share commits: if one finds the disk full, those beside it are refused too, and every answer is true.
    /// </summary>
    [Fact]
    public async Task Every_answer_to_many_writers_on_a_full_disk_is_true()
    {
        using var disk = SmallDisk.OfKilobytes(1500);
        var filler = Path.Combine(disk.Path, "filler");
        await File.WriteAllBytesAsync(filler, new byte[300_000], Studio.Cancellation);
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_DATA", disk.Path));
        await studio.HasASmallShop();
        var (kept, refused) = (new List<string> { "RB-014" }, 0);
        for (var round = 0; refused < 40; round++)
        {
            Assert.True(round < 200, "The disk never was full.");
            var answers = await Task.WhenAll(Enumerable.Range(0, 16)
                .Select(async i => (Sku: $"D-{round}-{i}", Answer: await studio.Put($"/v1/designs/D-{round}-{i}", Sample.Pendant))));
            Assert.All(answers.Where(one => one.Answer.Status != 201), one => one.Answer.IsProblem(503, "busy"));
            kept.AddRange(answers.Where(one => one.Answer.Status == 201).Select(one => one.Sku));
            refused += answers.Count(one => one.Answer.Status == 503);
        }

        File.Delete(filler);
        Assert.Equal(201, (await studio.Put("/v1/designs/last", Sample.Pendant)).Status);
        var stored = (await studio.Get("/v1/designs?limit=1000")).Json.GetProperty("items").EnumerateArray()
            .Select(one => one.GetProperty("key").GetString());
        Assert.Equal([.. kept.Append("last").Order(StringComparer.Ordinal)], stored);
    }

    /// <summary>Leaves no byte, for a write that needs less than the refused one.</summary>
    private static async Task FillUp(SmallDisk disk)
    {
        await using var rest = new FileStream(Path.Combine(disk.Path, "rest"), FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            while (true)
                await rest.WriteAsync(new byte[4096], Studio.Cancellation);
        }
        catch (IOException)
        {
        }
    }

    [Fact]
    public async Task A_data_folder_that_became_read_only_stops_the_start_with_its_path_and_user()
    {
        using var disk = SmallDisk.OfKilobytes(1000);
        using (var store = new Store(new SqliteEngine(Path.Combine(disk.Path, "pricefloor.db"), TimeProvider.System), TimeProvider.System))
            store.Open();
        disk.BecomesReadOnly();
        var refused = await RealProgram.Run(disk.Path);
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, disk.Path, $"user {Environment.UserName} (uid ", "Read-only file system",
            "Mount it writable", "PRICEFLOOR_DATA");
    }

    [Fact]
    public async Task A_disk_that_is_full_already_stops_the_start()
    {
        using var disk = SmallDisk.OfKilobytes(400);
        await FillUp(disk);
        var refused = await RealProgram.Run(disk.Path);
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, disk.Path, "No space left on device", "Make room on its disk", $"user {Environment.UserName}");
    }

    [Fact]
    public async Task A_store_without_room_for_its_first_table_stops_the_start()
    {
        using var disk = SmallDisk.OfKilobytes(400);
        // 7 pages are left, a store takes more
        await File.WriteAllBytesAsync(Path.Combine(disk.Path, "filler"), new byte[372 * 1024], Studio.Cancellation);
        var refused = await RealProgram.Run(disk.Path);
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, disk.Path, $"user {Environment.UserName}");
        Assert.Matches("no space left|[Mm]ake room|has space", refused.Errors);
    }

    [Fact]
    public async Task A_disk_too_full_for_an_upgrade_stops_the_start_before_anything_is_changed()
    {
        using var disk = SmallDisk.OfKilobytes(1200);
        var db = Path.Combine(disk.Path, "pricefloor.db");
        OldStore.Make(db, schema: 1);
        var before = await File.ReadAllBytesAsync(db, Studio.Cancellation);
        await File.WriteAllBytesAsync(Path.Combine(disk.Path, "filler"), new byte[500_000], Studio.Cancellation);
        var refused = await RealProgram.Run(disk.Path);
        Assert.Equal(1, refused.Code);
        OneSentence(refused.Errors, db, $"schema 1 and must be brought to {Migrations.Newest}", "MB free", "Make room and start again",
            $"user {Environment.UserName}");
        Assert.Equal(before, await File.ReadAllBytesAsync(db, Studio.Cancellation));
    }
}
