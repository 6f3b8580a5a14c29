using System.Text;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Backups;

/// <summary>After a restore or a forgotten document, no holder of an old cursor or ETag is answered as if nothing had happened.</summary>
public sealed class LifeTests
{
    private const string Pendant5 = """{"profile":"main","making":{"piecesPerDay":5}}""";

    private static async Task<Studio> AfterRestore(Studio studio, string backup)
    {
        var folder = await studio.Stopped();
        Restoring.Restore(Path.Combine(folder, backup), Path.Combine(folder, "pricefloor.db"), studio.Clock.GetUtcNow());
        return await studio.Restarted();
    }

    private static async Task<Studio> AfterForgetting(Studio studio, string kind, string key)
    {
        var folder = await studio.Stopped();
        Forgetting.Forget(Path.Combine(folder, "pricefloor.db"), kind, key, studio.Clock.GetUtcNow(), kindsBelow: ["price"]);
        return await studio.Restarted();
    }

    private static async Task<string> Cursor(Studio studio) => (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString()!;

    [Fact]
    public async Task A_follower_from_before_a_restore_must_begin_again_however_far_the_store_gets()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        Backup.Make(Path.Combine(studio.Folder, "pricefloor.db"), Path.Combine(studio.Folder, "b.db"));
        await studio.Has("/v1/designs/RB-014", Pendant5);
        var cursor = await Cursor(studio);
        await using var again = await AfterRestore(studio, "b.db");
        foreach (var pieces in new[] { 6, 7, 8 }) // the fifth, sixth and seventh write: behind the cursor, at it, beyond it
        {
            await again.Has("/v1/designs/RB-014", $$"""{"profile":"main","making":{"piecesPerDay":{{pieces}} } }""");
            Assert.Equal(["unknown-cursor"], (await again.Get($"/v1/floor-changes?since={cursor}")).IsProblem(422, "invalid-input").Codes);
        }

        var anew = (await again.Get("/v1/floor-changes")).Json;
        Assert.Equal(1, anew.GetProperty("items").GetArrayLength());
        Assert.Equal(200, (await again.Get($"/v1/floor-changes?since={anew.GetProperty("next").GetString()}")).Status);
    }

    [Fact]
    public async Task A_follower_who_knew_a_forgotten_design_must_begin_again()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/GONE", Sample.Pendant);
        var cursor = await Cursor(studio);
        Assert.Equal(204, (await studio.Delete("/v1/designs/GONE")).Status);
        await using var again = await AfterForgetting(studio, "design", "GONE");
        await again.Has("/v1/designs/NEW", Sample.Pendant);
        Assert.Equal(["unknown-cursor"], (await again.Get($"/v1/floor-changes?since={cursor}")).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(404, (await again.Get("/v1/designs/GONE/revisions")).Status);
    }

    [Fact]
    public async Task An_ETag_from_before_forgetting_matches_nothing_after_it()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        var old = (await studio.Get("/v1/designs/RB-014"))["ETag"]!;
        await studio.Delete("/v1/designs/RB-014");
        await using var again = await AfterForgetting(studio, "design", "RB-014");
        var other = await again.Has("/v1/designs/RB-014", Pendant5);
        Assert.Equal(("\"1\"", "\"3\""), (old, other["ETag"])); // 2 was the deletion
        (await again.Put("/v1/designs/RB-014", Sample.Pendant, null, ("If-Match", old))).IsProblem(412, "stale-revision");
        Assert.Equal(200, (await again.Get("/v1/designs/RB-014", null, ("If-None-Match", old))).Status);
        Assert.Equal(200, (await again.Put("/v1/designs/RB-014", Sample.Pendant, null, ("If-Match", other["ETag"]!))).Status);
    }

    [Fact]
    public async Task An_ETag_from_before_a_restore_matches_nothing_written_after_it()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        Backup.Make(Path.Combine(studio.Folder, "pricefloor.db"), Path.Combine(studio.Folder, "b.db"));
        var old = (await studio.Has("/v1/designs/RB-014", Pendant5))["ETag"]!;
        await using var again = await AfterRestore(studio, "b.db");
        var other = await again.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":6}}""");
        Assert.Equal(("\"2\"", "\"3\""), (old, other["ETag"]));
        (await again.Put("/v1/designs/RB-014", Sample.Pendant, null, ("If-Match", old))).IsProblem(412, "stale-revision");
    }

    [Fact]
    public async Task What_callers_hold_from_before_an_older_file_was_put_in_place_by_hand_matches_nothing_after_it()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        var db = Path.Combine(await studio.Stopped(), "pricefloor.db");
        File.Copy(db, db + ".older");
        studio = await studio.Restarted();
        var old = (await studio.Has("/v1/designs/RB-014", Pendant5))["ETag"]!;
        var cursor = await Cursor(studio);
        await studio.Stopped();
        File.Copy(db + ".older", db, overwrite: true);
        await using var again = await studio.Restarted();
        var other = await again.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":6}}""");
        Assert.Equal(("\"2\"", "\"1003\""), (old, other["ETag"])); // 2 was given, a leap of 1000, the next
        (await again.Put("/v1/designs/RB-014", Sample.Pendant, null, ("If-Match", old))).IsProblem(412, "stale-revision");
        Assert.Equal(["unknown-cursor"], (await again.Get($"/v1/floor-changes?since={cursor}")).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task Of_a_forgotten_design_and_its_prices_no_byte_is_left_in_the_data_folder()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        for (var price = 1; price <= 30; price++)
        {
            await studio.Has("/v1/designs/SECRET-7",
                $$"""{"name":"Anniversary piece {{price}}","profile":"main","making":{"minutesPerPiece":{{price}}} }""");
            await studio.Has("/v1/designs/SECRET-7/prices/web", $$"""{"price":{{price}}.77}""");
        }

        Assert.True(Holds(studio.Folder, "SECRET-7") && Holds(studio.Folder, "Anniversary piece") && Holds(studio.Folder, "29.77"));
        await studio.Delete("/v1/designs/SECRET-7");
        var folder = await studio.Stopped();
        // an answer of a service that was killed
        await File.WriteAllTextAsync(Path.Combine(folder, "answer-0.tmp"), "SECRET-7,29.77", Studio.Cancellation);
        Assert.Equal((0, 62), Verb(folder, "forget", "design", "SECRET-7")); // 30 of the design, 30 of its price, two deletions
        foreach (var trace in new[] { "SECRET-7", "Anniversary piece", "29.77" })
            Assert.False(Holds(folder, trace), trace);
        await using var again = await studio.Restarted();
        Assert.Equal(404, (await again.Get("/v1/designs/SECRET-7/prices/web/revisions")).Status);
        Assert.Equal(200, (await again.Get("/v1/designs/RB-014/prices/web")).Status);
        Assert.False(Holds(folder, "SECRET-7"));
    }

    private static (int Code, int Revisions) Verb(string folder, params string[] arguments)
    {
        using var output = new StringWriter();
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["PRICEFLOOR_DATA"] = folder }).Build();
        var code = StoreCommands.Run(arguments[0], arguments[1..], configuration, output);
        Assert.Contains("those of its listed prices included", output.ToString(), StringComparison.Ordinal);
        return (code, int.Parse(output.ToString().Split("is forgotten: ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>Whether any file of the folder, the write-ahead log included, has the text. The lock is skipped while it is held.</summary>
    private static bool Holds(string folder, string text) =>
        Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Where(file => Path.GetFileName(file) != StoreLock.FileName).Any(file =>
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return bytes.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
        });
}
