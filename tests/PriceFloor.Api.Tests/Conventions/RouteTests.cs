using System.Text.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

public sealed class RouteTests
{
    [Fact]
    public async Task Every_route_under_v1_says_what_it_is_and_needs_a_scope()
    {
        await using var studio = new Studio();
        foreach (var endpoint in studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.RoutePattern.RawText!.StartsWith("/v1", StringComparison.Ordinal)))
        {
            var told = endpoint.Metadata.GetMetadata<Operation>();
            Assert.True(told is { Id.Length: > 0, Summary.Length: > 0, Description.Length: > 20 }, endpoint.RoutePattern.RawText);
            Assert.NotNull(endpoint.Metadata.GetMetadata<NeedsScope>());
            Assert.Contains(endpoint.Metadata.GetMetadata<NeedsScope>()!.Scope is { } scope ? KeyRing.NameOf(scope) : "any key",
                told.Description.Split("Scope").Last(), StringComparison.Ordinal);
            if (endpoint.Metadata.GetMetadata<BodyMetadata>() is not null)
                Assert.NotNull(told.RequestExample ?? told.Cases[0].Request);
            Assert.Equal(told.Answer is null, told.AnswerExample is null && told.Cases.Count == 0);
        }
    }

    [Fact]
    public async Task Every_example_is_what_really_happens()
    {
        await using var studio = new Studio();
        async Task Same(string method, string path, string? body, string expected)
        {
            var answer = await studio.Send(method, path, body);
            Assert.True(answer.Status is 200 or 201, answer.Text);
            Assert.Equal(Normal(expected), Normal(answer.Text));
        }

        await Same("PUT", "/v1/profiles/main", Examples.Profile, Examples.StoredProfile);
        await Same("PUT", "/v1/designs/RB-014", Examples.Design, Examples.StoredDesign);
        await Same("PUT", "/v1/channels/web", Examples.Channel, Examples.StoredChannel);
        await Same("PUT", "/v1/designs/RB-014/prices/web", Examples.ListedPrice, Examples.StoredListedPrice);
        await Same("GET", "/v1/profiles/main/requirement", null, Examples.Requirement);
        await Same("GET", "/v1/designs/RB-014/floor-price", null, Examples.FloorPrice);
        await Same("POST", "/v1/floor-prices", Examples.WhatIf, Examples.WhatIfAnswer);
        await Same("POST", "/v1/price-checks", Examples.PriceCheckRequest, Examples.PriceCheck);
        await Same("GET", "/v1/price-checks?sku=RB-014&channel=web&price=58.00", null, Examples.PriceCheck);
        await Same("POST", "/v1/listed-prices/batch", Examples.ListingBatch, Examples.ListingBatchAnswer);
        foreach (var (accept, expected) in new[] { ("application/x-ndjson", Examples.DesignLines), ("text/csv", Examples.DesignSheet) })
            Assert.Equal(Normal(expected), Normal((await studio.Get("/v1/designs", null, ("Accept", accept))).Text));
        Assert.Equal(Examples.PriceListSheet, (await studio.Get("/v1/price-list?channel=web", null, ("Accept", "text/csv"))).Text);
        await Same("POST", "/v1/price-checks/batch", Examples.Batch, Examples.BatchAnswer);
        foreach (var (type, body, expected) in new[]
        {
            ("application/x-ndjson", Examples.BatchLines, Examples.BatchLinesAnswer),
            ("text/csv", Examples.BatchSheet, Examples.BatchSheetAnswer),
        })
            Assert.Equal(expected, (await studio.SendBytes("POST", "/v1/price-checks/batch", System.Text.Encoding.UTF8.GetBytes(body), type)).Text);
        await Same("GET", "/v1/price-list?channel=web", null, Examples.PriceList);
        await Same("GET", "/v1/designs/RB-014/price-parts?channel=web", null, Examples.PriceParts);
        await Same("GET", "/v1/designs/RB-014/floor-history?channel=web", null, Examples.FloorHistory);
        await Same("GET", "/v1/floor-changes", null, Examples.FloorChanges);
        await Same("GET", "/v1/designs/RB-014/break-even?channel=web&price=120.00", null, Examples.BreakEven);
        await Same("GET", "/v1/designs/RB-014/remedies?channel=web&price=58.00", null, Examples.Remedies);
        await Same("POST", "/v1/break-even", Examples.Mix, Examples.MixBreakEven);
        await Same("POST", "/v1/design-budgets", Examples.DesignBudget, Examples.DesignBudgetAnswer);
        await Same("POST", "/v1/quick-floor", Examples.QuickFloor, Examples.QuickFloorAnswer);
        await Same("POST", "/v1/year-plans/best", Examples.BestPlan, Examples.BestPlanAnswer);
        await Same("POST", "/v1/year-plans", Examples.YearPlan, Examples.YearPlanAnswer);
        await Same("POST", "/v1/markups", Examples.Chain, Examples.ChainAnswer);
        await Same("PUT", "/v1/reading-rules/main", Examples.ReadingRules, Examples.StoredReadingRules);
        foreach (var (type, body, expected) in new[]
        {
            ("text/csv", Examples.StatementSheet, Examples.StatementAnswer),
            ("application/x-ofx", Examples.StatementOfx, null),
            ("application/xml", Examples.StatementCamt, null),
        })
        {
            var drafted = await studio.SendBytes("POST", "/v1/statements?account=current", System.Text.Encoding.UTF8.GetBytes(body), type);
            Assert.Equal(200, drafted.Status);
            Assert.Equal(1, drafted.Json.GetProperty("draft").GetProperty("expenses").EnumerateArray()
                .Count(line => line.GetProperty("name").GetString() == "Rent"));
            if (expected is not null)
                Assert.Equal(Normal(expected), Normal(drafted.Text));
        }

        await Same("GET", "/v1/profiles", null, $$"""{"items":[{{Examples.StoredProfile}}],"next":null}""");
        await Same("POST", "/v1/designs/batch", Examples.DesignBatch, Examples.DesignBatchAnswer);
        foreach (var (type, body) in new[] { ("application/x-ndjson", Examples.DesignBatchLines), ("text/csv", Examples.DesignBatchSheet) })
            Assert.Equal(200, (await studio.SendBytes("POST", "/v1/designs/batch", System.Text.Encoding.UTF8.GetBytes(body), type)).Status);
        await Same("POST", "/v1/keys", Examples.KeyRequest, Examples.Key);
        await Same("POST", "/v1/keys/shop-plugin/rotation", null, Examples.RotatedKey);
        await Same("GET", "/v1/audit?limit=1", null, Examples.Audit);
        await Same("POST", "/v1/backups", null, Examples.Backup);
    }

    [Fact]
    public async Task Settings_and_problems_are_all_in_the_docs()
    {
        var running = await File.ReadAllTextAsync(Repository.File("docs/running.md"), Studio.Cancellation);
        foreach (var name in PriceFloor.Api.Configuration.Settings.Names.Keys)
            Assert.Contains($"`{name}`", running, StringComparison.Ordinal);
        foreach (var scope in Enum.GetValues<Scope>())
            Assert.Contains($"| `{KeyRing.NameOf(scope)}` |",
                await File.ReadAllTextAsync(Repository.File("docs/integrating.md"), Studio.Cancellation), StringComparison.Ordinal);
        var costs = await File.ReadAllTextAsync(Repository.File("docs/costs-people-forget.md"), Studio.Cancellation);
        foreach (var heading in new[] { "insurance", "repairs", "depreciation", "packaging", "training" })
            Assert.Contains($"`{heading}`", costs, StringComparison.Ordinal);
    }

    /// <summary>Without what differs from run to run: times, secrets, and a backup's bytes.</summary>
    private static string Normal(string json)
    {
        var text = json.TrimStart().StartsWith('{') ? JsonSerializer.Serialize(JsonDocument.Parse(json).RootElement) : json;
        text = System.Text.RegularExpressions.Regex.Replace(text, "\"bytes\":[0-9]+,\"sha256\":\"[0-9a-f]{64}\",\"schema\":[0-9]+",
            "\"bytes\":0,\"sha256\":\"...\",\"schema\":0");
        text = System.Text.RegularExpressions.Regex.Replace(text, "\"next\":\"p([0-9]+)\\.[0-9a-f]{12}\"", "\"next\":\"p$1.(life)\"");
        return System.Text.RegularExpressions.Regex.Replace(text,
            "\"(savedAt|createdAt|at|previousUntil|key|requestId)\":\"(pf_|20|0)[^\"]*\"", "\"$1\":\"...\"");
    }
}
