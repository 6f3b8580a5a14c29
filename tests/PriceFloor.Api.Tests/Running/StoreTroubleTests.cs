using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>A store that is locked by another process: readers go on, writers are asked to try again, nothing is half done.</summary>
public sealed class StoreTroubleTests
{
    private static readonly int[] s_stored = [200, 201];

    [Fact]
    public async Task While_another_process_writes_readers_continue_and_writers_must_try_again()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await using (var other = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False"))
        {
            await other.OpenAsync(Studio.Cancellation);
            await using var hold = other.BeginTransaction(deferred: false);
            var refused = studio.Delete("/v1/designs/RB-014");
            Assert.Equal("61.74", (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).Json.GetProperty("floorPrice").GetRawText());
            (await studio.Get("/health/ready")).IsProblem(503, "busy");
            var busy = (await refused).IsProblem(503, "busy");
            Assert.InRange(int.Parse(busy["Retry-After"]!, CultureInfo.InvariantCulture), 1, 60);
            Assert.False(busy.Json.TryGetProperty("errors", out _));
        }

        Assert.Equal(200, (await studio.Get("/health/ready")).Status);
        Assert.Equal("\"1\"", (await studio.Get("/v1/designs/RB-014"))["ETag"]);
        Assert.Equal("58.00", (await studio.Get("/v1/designs/RB-014/prices/web")).Json.GetProperty("price").GetRawText());
        Assert.Equal(204, (await studio.Delete("/v1/designs/RB-014")).Status);
    }

    [Fact]
    public async Task A_store_that_holds_rubbish_is_a_problem_that_names_the_document_and_nothing_in_it()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await using (var other = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False"))
        {
            await other.OpenAsync(Studio.Cancellation);
            await using var spoil = other.CreateCommand();
            spoil.CommandText = "UPDATE revision SET body = '{\"secret\":' WHERE kind = 'profile'";
            await spoil.ExecuteNonQueryAsync(Studio.Cancellation);
        }

        await using var again = await studio.Restarted(); // the running service may have the documents in memory
        var answer = (await again.Get("/v1/profiles/main/requirement")).IsProblem(503, "damaged-document");
        Assert.Equal(["type", "title", "status", "detail", "requestId"], answer.Json.EnumerateObject().Select(property => property.Name));
        Assert.DoesNotContain("secret", answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Json", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_store_that_loses_its_end_while_it_is_served_is_reported_as_out_of_service()
    {
        await using var studio = await (await WithManyDesigns()).Restarted(); // so that nothing is in the log beside the file
        using (var file = new FileStream(Path.Combine(studio.Folder, "pricefloor.db"), FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
            file.SetLength(4096);
        foreach (var answer in new[]
        {
            await studio.Get("/v1/designs"),
            await studio.Put("/v1/designs/D-1", Sample.Pendant),
            await studio.Get("/v1/designs/D-150"),
            await studio.Get("/health/ready"),
        })
            answer.IsProblem(503, "busy");
        Assert.Equal(200, (await studio.Get("/health/live")).Status);

        static async Task<Studio> WithManyDesigns()
        {
            var studio = new Studio();
            await studio.Has("/v1/profiles/main", Sample.SmallProfile);
            for (var i = 0; i < 200; i++)
                await studio.Has($"/v1/designs/D-{i}", Sample.Pendant);
            return studio;
        }
    }

    [Fact]
    public async Task Many_at_once_are_all_answered_and_all_stored()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        var answers = await Task.WhenAll(Enumerable.Range(0, 40)
            .Select(i => studio.Put($"/v1/designs/D-{i % 20}", $$"""{"profile":"main","making":{"minutesPerPiece":{{i + 1}} } }""")));
        Assert.All(answers, answer => Assert.Contains(answer.Status, s_stored));
        var stored = (await studio.Get("/v1/designs")).Json.GetProperty("items");
        Assert.Equal(20, stored.GetArrayLength());
        Assert.All(stored.EnumerateArray(), design => Assert.Equal(2, design.GetProperty("revision").GetInt32()));
    }
}
