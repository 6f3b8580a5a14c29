using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>Quotes survive what documents survive, and are gone when they are forgotten.</summary>
public sealed class KeptQuoteTests
{
    private const int Rounds = 4, LeastIssued = 3;

    [Fact]
    public async Task A_backup_carries_quotes_with_all_that_became_of_them()
    {
        var studio = await QuotingStudio.Small();
        await studio.HasDone("Q-1", 2, 3);
        string[] paths = ["", "/figures", "/page", "/outcome", "/actual", "/revisions"];
        var before = await Texts(studio, paths);
        Backup.Make(Path.Combine(studio.Folder, "pricefloor.db"), Path.Combine(studio.Folder, "b.db"));
        await studio.Has("/v1/quotes/Q-1/outcome", """{"result":"withdrawn"}""");
        var folder = await studio.Stopped();
        Restoring.Restore(Path.Combine(folder, "b.db"), Path.Combine(folder, "pricefloor.db"), studio.Clock.GetUtcNow());
        await using var again = await studio.Restarted();
        Assert.Equal(before, await Texts(again, paths));
        Assert.Empty(StoreCheck.Of(Path.Combine(folder, "b.db"), (_, _) => null).Faults);
    }

    [Fact]
    public async Task Of_a_forgotten_quote_no_byte_is_left_in_the_data_folder()
    {
        var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/SECRET-7", QuotingStudio.Repair);
        await studio.Issues("SECRET-7");
        await studio.Has("/v1/quotes/SECRET-7/outcome", """{"result":"accepted"}""");
        await studio.Has("/v1/quotes/SECRET-7/actual", """{"benchHours":2.718281}""");
        await studio.Has("/v1/quotes/SECRET-70", QuotingStudio.Repair.Replace("the blue bowl", "another", StringComparison.Ordinal));
        var folder = await studio.Stopped();
        using var output = new StringWriter();
        var settings = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { ["PRICEFLOOR_DATA"] = folder }).Build();
        Assert.Equal(0, StoreCommands.Run("forget", ["quote", "SECRET-7"], settings, output));
        // a draft, its issue, the outcome, the actual figures
        Assert.Contains("4 revisions are erased, those of its outcome and its actual figures included", output.ToString(), StringComparison.Ordinal);
        foreach (var trace in new[] { "the blue bowl", "2.718281", "\"SECRET-7\"" })
            Assert.All(Directory.GetFiles(folder).Where(file => Path.GetFileName(file) != StoreLock.FileName), file =>
                Assert.Equal(-1, File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(trace))));
        await using var again = await studio.Restarted();
        foreach (var path in new[] { "", "/revisions", "/outcome", "/actual/revisions" })
            Assert.Equal((path, 404), (path, (await again.Get("/v1/quotes/SECRET-7" + path)).Status));
        Assert.Equal("draft", await again.StateOf("SECRET-70"));
        Assert.Equal(201, (await again.Put("/v1/quotes/SECRET-7", QuotingStudio.Repair)).Status);
    }

    [Fact]
    public async Task A_draft_that_is_forgotten_holds_nothing_any_more()
    {
        var studio = await QuotingStudio.Small();
        await studio.Has("/v1/designs/CUP", Sample.Pendant);
        await studio.Has("/v1/quotes/Q-1", """{"profile":"main","channel":"web","lines":[{"quantity":1,"design":"CUP"}]}""");
        var folder = await studio.Stopped();
        Forgetting.Forget(Path.Combine(folder, "pricefloor.db"), "quote", "Q-1", studio.Clock.GetUtcNow(), mayStand: true);
        await using var again = await studio.Restarted();
        Assert.Equal(204, (await again.Delete("/v1/designs/CUP")).Status);
    }

    [Fact]
    public async Task Quotes_move_no_cursor_of_those_who_follow_floors()
    {
        await using var studio = await QuotingStudio.Small();
        var next = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        await studio.HasDone("Q-1", 2, 3);
        Assert.Equal($$"""{"items":[],"next":"{{next}}"}""", (await studio.Get($"/v1/floor-changes?since={next}")).Text);
        Assert.Equal(next, (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString());
        await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":5}}""");
        var moved = (await studio.Get($"/v1/floor-changes?since={next}")).Json;
        Assert.Equal(("RB-014", true), (moved.GetProperty("items")[0].GetProperty("sku").GetString(), moved.GetProperty("next").GetString() != next));
    }

    /// <summary>The service is killed while it issues: a quote is then a draft or whole, and what a caller was told is true.</summary>
    [Fact]
    public async Task A_quote_is_issued_whole_or_not_at_all_however_the_service_ends()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-issued-").FullName;
        var told = new Dictionary<string, string>();
        for (var round = 0; round < Rounds; round++)
        {
            using var service = Start(folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }).WithoutItsOutput();
            await Ready(service);
            using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
            client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
            if (round == 0)
                foreach (var (path, body) in new[] { ("profiles/main", Sample.SmallProfile), ("channels/web", Sample.Shop) })
                    Assert.Equal(201, (await Ask(client, HttpMethod.Put, path, body))!.Status);
            await IsWhole(client, told);
            await IssueUntilKilled(service, client, round, told);
        }

        Assert.True(told.Count >= Rounds * LeastIssued, $"Only {told.Count} were issued.");
        Assert.Empty(StoreCheck.Of(Path.Combine(folder, "pricefloor.db"), (_, _) => null).Faults);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>
    /// A machine that does much else issues few quotes in a time, so the kill waits for some of them and not for a time; then it comes while another
    /// is stored or issued.
    /// </summary>
    private static async Task IssueUntilKilled(Started service, HttpClient client, int round, Dictionary<string, string> told)
    {
        var (kill, took) = (Task.CompletedTask, Stopwatch.StartNew());
        for (var i = 0; ; i++)
        {
            if (i == LeastIssued)
                kill = Task.Delay(Random.Shared.Next((int)(2 * took.ElapsedMilliseconds / i) + 1), Studio.Cancellation)
                    .ContinueWith(_ => service.Process.Kill(), TaskScheduler.Default);
            var key = string.Create(CultureInfo.InvariantCulture, $"Q-{round}-{i}");
            if (await Ask(client, HttpMethod.Put, $"quotes/{key}", QuotingStudio.Repair) is null
                    || await Ask(client, HttpMethod.Post, $"quotes/{key}/issue") is not { } issued)
                break;
            told[key] = issued.Text;
        }

        await kill;
    }

    private static async Task IsWhole(HttpClient client, Dictionary<string, string> told)
    {
        foreach (var quote in (await Ask(client, HttpMethod.Get, "quotes?limit=1000"))!.Json.GetProperty("items").EnumerateArray())
        {
            var (key, state) = (quote.GetProperty("key").GetString()!, quote.GetProperty("state").GetString());
            var figures = (await Ask(client, HttpMethod.Get, $"quotes/{key}/figures"))!;
            Assert.Equal((key, 200, state == "issued"), (key, figures.Status, figures.Json.TryGetProperty("issuedAt", out _)));
            Assert.Equal(told.GetValueOrDefault(key, quote.GetRawText()), quote.GetRawText());
            Assert.Equal(state == "issued", quote.TryGetProperty("issuedAt", out _));
        }

        foreach (var key in told.Keys)
            Assert.Equal(200, (await Ask(client, HttpMethod.Get, $"quotes/{key}"))!.Status);
    }

    /// <summary>Null if the service is gone.</summary>
    private static async Task<Answer?> Ask(HttpClient client, HttpMethod method, string path, string? json = null)
    {
        try
        {
            using var request = new HttpRequestMessage(method, new Uri("/v1/" + path, UriKind.Relative));
            if (json is not null)
                request.Content = new StringContent(json, Encoding.UTF8, "application/json");
            using var response = await client.SendAsync(request, Studio.Cancellation);
            return await Answer.Of(response);
        }
        catch (HttpRequestException)
        {
            return null;
        }
    }

    private static async Task<List<string>> Texts(Studio studio, string[] paths)
    {
        var texts = new List<string>();
        foreach (var path in paths)
            texts.Add((await studio.Get("/v1/quotes/Q-1" + path)).Text);
        return texts;
    }
}
