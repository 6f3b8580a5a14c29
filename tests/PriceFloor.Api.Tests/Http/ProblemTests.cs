using System.Globalization;
using System.Text.RegularExpressions;
using FluentValidation;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.Tests.Contract;
using PriceFloor.Api.Tests.Conventions;
using PriceFloor.Api.Tests.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

public sealed class ProblemTests
{
    private static readonly string[] s_accepted = ["text/html", "text/plain", "application/xml", "*/*"];

    /// <summary>Every slug, and how it is provoked; the others are provoked in the tests beside this one, and here once more.</summary>
    private static readonly Dictionary<string, Func<Studio, Task<Answer>>> s_provoked = new()
    {
        ["unreadable-request"] = studio => studio.Put("/v1/profiles/x", "{"),
        ["no-key"] = studio => studio.Get("/v1/profiles", studio.ClientWith(null)),
        ["key-not-allowed"] = async studio => await studio.Get("/v1/profiles", await studio.ClientFor("check")),
        ["not-found"] = studio => studio.Get("/v1/profiles/none"),
        ["method-not-allowed"] = studio => studio.Post("/v1/profiles/main", "{}"),
        ["not-acceptable"] = studio => studio.Get("/v1/profiles", headers: ("Accept", "text/csv")),
        ["in-use"] = studio => studio.Delete("/v1/profiles/main"),
        ["issued"] = async studio =>
        {
            await IsIssued(studio);
            return await studio.Delete("/v1/quotes/Q-1");
        },
        ["not-issued"] = async studio =>
        {
            await studio.Has("/v1/quotes/Q-2", """{"profile":"main","channel":"web","extra":[{"hours":2}]}""");
            return await studio.Put("/v1/quotes/Q-2/outcome", """{"result":"accepted"}""");
        },
        ["stale-revision"] = studio => studio.Delete("/v1/profiles/main", headers: ("If-Match", "\"9\"")),
        ["too-large"] = studio => studio.Put("/v1/profiles/x", new string(' ', 2_100_000)),
        ["media-type"] = studio => studio.SendBytes("PUT", "/v1/profiles/x", [1], "text/csv"),
        ["invalid-input"] = studio => studio.Put("/v1/profiles/x", "{}"),
        ["unknown-reference"] = studio => studio.Get("/v1/price-checks?sku=x&channel=y&price=1"),
        ["currency-mismatch"] = studio => studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=1&currency=EUR"),
        ["cannot-compute"] = async studio =>
        {
            await studio.Has("/v1/channels/dear", """{"sells":"retail","currency":"USD","costPerPiece":1000000000000}""");
            return await studio.Get("/v1/price-checks?sku=RB-014&channel=dear&price=1");
        },
        ["quota"] = async _ =>
        {
            await using var host = HostedService.Start();
            var small = await host.HasStudio("small", """{"documents":1}""");
            await host.Put("/v1/channels/web", Sample.Shop, small);
            return await host.Put("/v1/channels/stall", Sample.Shop, small);
        },
        ["too-many-requests"] = async studio =>
        {
            await using var hurried = new Studio(configure: host => host.UseSetting("PRICEFLOOR_REQUESTS_PER_MINUTE", "2"));
            await hurried.Get("/v1/profiles");
            await hurried.Get("/v1/profiles");
            var answer = await hurried.Get("/v1/profiles");
            Assert.InRange(int.Parse(answer["Retry-After"]!, CultureInfo.InvariantCulture), 1, 60);
            Assert.StartsWith("\"default\";r=0;t=", answer["RateLimit"], StringComparison.Ordinal);
            Assert.Equal("\"default\";q=2;w=60", answer["RateLimit-Policy"]);
            return answer;
        },
        ["busy"] = async studio =>
        {
            await using var other = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False");
            await other.OpenAsync(Studio.Cancellation);
            await using var hold = other.BeginTransaction(deferred: false);
            var answer = await studio.Put("/v1/profiles/x", Sample.SmallProfile);
            Assert.NotNull(answer["Retry-After"]);
            return answer;
        },
        ["damaged-document"] = async studio =>
        {
            await studio.Has("/v1/profiles/damaged", Sample.SmallProfile);
            await using var other = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False");
            await other.OpenAsync(Studio.Cancellation);
            await using var spoil = other.CreateCommand();
            spoil.CommandText = "UPDATE revision SET body = '{}' WHERE key = 'damaged'";
            await spoil.ExecuteNonQueryAsync(Studio.Cancellation);
            return await studio.Get("/v1/profiles/damaged");
        },
        ["internal"] = async _ =>
        {
            await using var broken = new Studio(configure: host => host.ConfigureTestServices(services =>
                services.AddSingleton<IValidator<PriceCheckRequest>>(_ => throw new InvalidOperationException("a secret of the inside"))));
            var answer = await broken.Post("/v1/price-checks", "{}");
            Assert.DoesNotContain("secret", answer.Text, StringComparison.Ordinal);
            return answer;
        },
    };

    private static async Task IsIssued(Studio studio)
    {
        await studio.Has("/v1/quotes/Q-1", """{"profile":"main","channel":"web","extra":[{"hours":2}],"price":120,"validUntil":"2027-02-01"}""");
        Assert.Equal(200, (await studio.Send("POST", "/v1/quotes/Q-1/issue", null)).Status);
    }

    public static TheoryData<string> Slugs => [.. ProblemTypes.All.Select(type => type.Slug)];

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task Every_problem_is_provoked_and_has_a_page(string slug)
    {
        var type = ProblemTypes.All.Single(type => type.Slug == slug);
        foreach (var environment in new[] { "Production", "Development" })
        {
            await using var studio = new Studio(environment);
            await studio.HasASmallShop();
            var answer = (await s_provoked[slug](studio)).IsProblem(type.Status, slug);
            Assert.Equal($"/problems/{slug}", answer.Json.GetProperty("type").GetString());
            Assert.Equal(answer["X-Request-Id"], answer.Json.GetProperty("requestId").GetString());
            AnswersItsExample(type, answer.Text);
            var page = await studio.Get($"/problems/{slug}", studio.ClientWith(null));
            Assert.Equal((200, "text/html"), (page.Status, page.ContentType));
            Assert.Contains(System.Net.WebUtility.HtmlEncode(type.Cure), page.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Whatever_Accept_says_a_problem_is_JSON()
    {
        foreach (var environment in new[] { "Production", "Development" })
            await foreach (var accept in s_accepted.ToAsyncEnumerable())
            {
                await using var studio = new Studio(environment);
                (await studio.Get("/nowhere", headers: ("Accept", accept))).IsProblem(404, "not-found");
                (await studio.Send("POST", "/health/live", "{}", null, ("Accept", accept))).IsProblem(405, "method-not-allowed");
                (await studio.Get("/v1/profiles", studio.ClientWith("wrong"), ("Accept", accept))).IsProblem(401, "no-key");
            }
    }

    private static void AnswersItsExample(ProblemType type, string answer)
    {
        var example = ProblemExamples.Of(type);
        var file = Repository.File(ExampleFiles.PathOf(example));
        if (File.Exists(file) && WithId("...", ExampleText.OnOneLine(example.Text)) == WithId("...", answer))
        {
            ExampleFiles.Keep(example);
            return;
        }

        ExampleFiles.Propose(example, WithId("0192f3a4b5c67d8e9fa0b1c2d3e4f506", answer));
        Assert.Fail($"{ExampleFiles.PathOf(example)} is not what the service answers: {answer}\n{ExampleFiles.HowToRewrite}");
    }

    /// <summary>A request's id is different each time.</summary>
    private static string WithId(string id, string problem) =>
        Regex.Replace(problem, "\"requestId\":\"[0-9a-f]{32}\"", $"\"requestId\":\"{id}\"", RegexOptions.None, TimeSpan.FromSeconds(5));
}
