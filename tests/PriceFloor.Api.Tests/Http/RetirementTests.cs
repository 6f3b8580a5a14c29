using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Running;
using PriceFloor.Api.Tests.Contract;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>Nothing is deprecated today; these addresses exist only here.</summary>
public sealed class RetirementTests : IAsyncLifetime
{
    private static readonly DateTimeOffset s_since = new(2027, 3, 1, 0, 0, 0, TimeSpan.Zero);
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-test-").FullName;
    private WebApplication _service = null!;
    private HttpClient _client = null!;

    public async ValueTask InitializeAsync()
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Configuration["PRICEFLOOR_DATA"] = _folder;
        builder.Configuration["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey;
        builder.Configuration["Serilog:MinimumLevel:Default"] = "Fatal";
        builder.Configuration["Serilog:MinimumLevel:Override:Microsoft.Hosting.Lifetime"] = "Fatal";
        builder.UseSettings(demo: false);
        builder.UseRequestLog();
        builder.UseStore();
        builder.UseDocuments();
        builder.UseOpenApi();
        builder.Services.AddSingleton(new BakedContract(_folder)); // the build knows nothing of these addresses
        _service = builder.Build();
        _service.UseRequestPipeline();
        _service.UseOpenApiPages();
        _service.MapRoutes();
        var told = new Operation("getOld", "Health", "Old", "An address to leave.")
        {
            Answer = typeof(HealthAnswer),
            AnswerExample = HealthOperations.Live.AnswerExample,
        };
        _service.MapGet("/old", Old).Retiring(s_since, s_since.AddYears(1), "/docs/versioning").Tell(told);
        _service.MapGet("/ageing", Old).Retiring(s_since, sunset: null, "/docs/versioning").Tell(told with { Id = "getAgeing" });
        _service.MapGet("/old-and-closed", Old).Needs(Scope.Read).Retiring(s_since, s_since, "/docs/versioning")
            .Tell(told with { Id = "getOldAndClosed" });
        await _service.StartAsync(Studio.Cancellation);
        _client = _service.GetTestClient();
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _service.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task A_retiring_address_says_since_when_until_when_and_where_to_read_and_keeps_its_own_links()
    {
        var answer = await Get("/old");
        // 2027-03-01T00:00:00Z: 57 years, 14 of them leap (1972 to 2024), and 59 days: (57 * 365 + 14 + 59) * 86400
        Assert.Equal((200, "@1803859200", "Wed, 01 Mar 2028 00:00:00 GMT"), (answer.Status, answer["Deprecation"], answer["Sunset"]));
        Assert.Equal("</old?after=1>; rel=\"next\", </docs/versioning>; rel=\"deprecation\"; type=\"text/html\", </docs/versioning>; rel=\"sunset\"; "
            + "type=\"text/html\"", answer["Link"]);
    }

    [Fact]
    public async Task Without_an_end_there_is_no_Sunset()
    {
        var answer = await Get("/ageing");
        Assert.Equal(("@1803859200", null), (answer["Deprecation"], answer["Sunset"]));
        Assert.DoesNotContain("sunset", answer["Link"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_request_is_logged_too()
    {
        var answer = (await Get("/old-and-closed")).IsProblem(401, "no-key");
        Assert.Equal(("@1803859200", "Mon, 01 Mar 2027 00:00:00 GMT"), (answer["Deprecation"], answer["Sunset"]));
    }

    [Fact]
    public async Task Other_addresses_say_nothing_of_it()
    {
        var answer = await Get("/health/live");
        Assert.Equal((200, null, null), (answer.Status, answer["Deprecation"], answer["Sunset"]));
    }

    [Fact]
    public async Task The_contract_marks_it_and_names_its_headers()
    {
        var document = (await Get("/openapi/v1.json")).Text;
        var paths = JsonDocument.Parse(document).RootElement.GetProperty("paths");
        var contract = new ContractDocument(JsonNode.Parse(document)!);
        var old = paths.GetProperty("/old").GetProperty("get");
        Assert.True(old.GetProperty("deprecated").GetBoolean());
        Assert.Contains("Deprecated since 2027-03-01; answers until 2028-03-01. See /docs/versioning.", old.GetProperty("description").GetString(),
            StringComparison.Ordinal);
        foreach (var response in old.GetProperty("responses").EnumerateObject())
            foreach (var header in new[] { "Deprecation", "Sunset", "Link" })
                Assert.True(contract.Followed(JsonNode.Parse(response.Value.GetRawText())!)["headers"]![header] is not null,
                    $"{response.Name} {header}");
        Assert.False(paths.GetProperty("/ageing").GetProperty("get").GetProperty("responses").GetProperty("200").GetProperty("headers")
            .TryGetProperty("Sunset", out _));
        Assert.False(paths.GetProperty("/health/live").GetProperty("get").TryGetProperty("deprecated", out _));
    }

    [Fact]
    public void An_end_before_the_beginning_is_refused() =>
        Assert.Throws<ArgumentException>(() => new Retirement(s_since, s_since.AddDays(-1), "/docs/versioning"));

    private static IResult Old(HttpContext context)
    {
        context.Response.Headers.Link = "</old?after=1>; rel=\"next\"";
        return TypedResults.Ok(new HealthAnswer("old"));
    }

    private async Task<Answer> Get(string path)
    {
        using var response = await _client.GetAsync(new Uri(path, UriKind.Relative), Studio.Cancellation);
        return await Answer.Of(response);
    }
}
