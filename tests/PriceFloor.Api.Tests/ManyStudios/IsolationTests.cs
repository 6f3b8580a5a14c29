using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Tests.Access;
using PriceFloor.Api.Tests.Contract;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>Two studios in one service: neither learns of the other, whatever it asks.</summary>
public class IsolationTests
{
    private protected virtual bool IsOnServer => ServerStore.IsForAll;

    /// <summary>What the documents of the scope tests are full of, and figures of their listed prices.</summary>
    private static readonly Regex s_others =
        new("zircon|beryl|onyx|jasper|opal|91[.]37|443[.]21|77[.]77", RegexOptions.IgnoreCase, TimeSpan.FromSeconds(10));

    [Fact]
    public async Task A_foreign_key_sees_nothing_at_any_address()
    {
        await using var host = HostedService.Start(onServer: IsOnServer);
        var (owner, stranger) = (await host.HasStudio("owner"), await host.HasStudio("stranger"));
        await Furnish(host, owner);
        var before = (await host.Get("/v1/audit?limit=1000", owner)).Text;
        var contract = await ContractDocument.Of(host);
        var routes = contract.Operations.Select(one => $"{one.Method.ToUpperInvariant()} {one.Path}").ToList();
        Assert.Empty(routes.Except(ScopeRequests.ByRoute.Keys));

        var (told, sent) = (new List<string>(), 0);
        foreach (var route in routes)
            foreach (var request in ScopeRequests.ByRoute[route])
            {
                var answer = await host.SendBytes(route.Split(' ')[0], request.Path, request.Body is { } body ? Encoding.UTF8.GetBytes(body) : null,
                    request.Type, stranger, request.Accept is { } accept ? [("Accept", accept)] : []);
                sent++;
                told.AddRange(s_others.Matches(answer.Text).Select(found => found.Value)
                    .Where(word => !request.Text.Contains(word, StringComparison.OrdinalIgnoreCase)).Distinct()
                    .Select(word => $"{route} {request.Path}: {answer.Status} tells {word}"));
                if (answer.Status >= 500)
                    told.Add($"{route} {request.Path}: {answer.Status}");
            }

        Assert.True(told.Count == 0, string.Join('\n', told));
        Assert.True(sent > 150);
        Assert.Equal(before, (await host.Get("/v1/audit?limit=1000", owner)).Text); // nor has it written there
        foreach (var (path, _) in ScopeStudio.Stored)
            Assert.Equal((path, 200), (path, (await host.Get(path, owner)).Status));
    }

    [Fact]
    public async Task A_studio_with_the_same_keys_answers_as_if_it_were_alone()
    {
        await using var host = HostedService.Start(onServer: IsOnServer);
        await using var alone = new Studio();
        var (first, second) = (await host.HasStudio("first"), await host.HasStudio("second"));
        await Furnish(host, first);
        await host.HasASmallShop(second);
        await alone.HasASmallShop();
        foreach (var path in new[]
        {
            "/v1/designs/RB-014/floor-price?workings=true", "/v1/price-checks?sku=RB-014&channel=web&price=58", "/v1/price-list?channel=web",
            "/v1/profiles/main/requirement", "/v1/shelf?profile=main", "/v1/stock", "/v1/designs/RB-014/evidence", "/v1/floor-changes",
            "/v1/sheets/fees",
        })
        {
            await host.Get(path, first); // what the first is answered is in memory
            Assert.Equal((path, Settled(await alone.Get(path))), (path, Settled(await host.Get(path, second))));
        }

        Assert.Equal(201, (await host.Put("/v1/designs/NEW", Sample.Pendant, first)).Status);
        Assert.Equal(404, (await host.Get("/v1/designs/NEW", second)).Status);
    }

    [Fact]
    public async Task Cursors_and_tags_of_one_studio_mean_nothing_in_another()
    {
        await using var host = HostedService.Start(onServer: IsOnServer);
        var (first, second) = (await host.HasStudio("first"), await host.HasStudio("second"));
        await host.HasASmallShop(first);
        await host.HasASmallShop(second);
        var cursor = (await host.Get("/v1/floor-changes", first)).Json.GetProperty("next").GetString();
        var own = (await host.Get("/v1/floor-changes", second)).Json.GetProperty("next").GetString();
        Assert.NotEqual(cursor, own);
        Assert.Equal(200, (await host.Get($"/v1/floor-changes?since={cursor}", first)).Status);
        Assert.Equal(422, (await host.Get($"/v1/floor-changes?since={cursor}", second)).Status);

        for (var n = 0; n < 3; n++)
            await host.Put("/v1/designs/RB-014/prices/web", $$"""{"price":{{60 + n}}.00}""", first);
        var tag = (await host.Get("/v1/designs/RB-014/prices/web", first))["ETag"]!;
        Assert.Equal(412, (await host.Put("/v1/designs/RB-014/prices/web", """{"price":70.00}""", second, ("If-Match", tag))).Status);
        Assert.Equal(200, (await host.Get("/v1/designs/RB-014/prices/web", second, ("If-None-Match", tag))).Status);
        Assert.Equal(58.00m, (await host.Get("/v1/designs/RB-014/prices/web", second)).Json.GetProperty("price").GetDecimal());
    }

    [Fact]
    public async Task Limits_of_requests_count_for_each_studio()
    {
        await using var host = HostedService.Start(onServer: IsOnServer, configure: with => with.UseSetting("PRICEFLOOR_REQUESTS_PER_MINUTE", "8"));
        var (first, second) = (await host.HasStudio("first"), await host.HasStudio("second")); // both keys have the name "owner"
        for (var n = 0; n < 8; n++)
            Assert.Equal(200, (await host.Get("/v1/version", first)).Status);
        Assert.Equal((429, 200), ((await host.Get("/v1/version", first)).Status, (await host.Get("/v1/version", second)).Status));
    }

    [Fact]
    public async Task The_log_names_keys_and_the_metrics_the_busiest_studios()
    {
        var log = new CapturedLog();
        await using var host = HostedService.Start(onServer: IsOnServer, configure: with =>
        {
            with.UseSetting("PRICEFLOOR_METRICS", "on");
            log.Of(with);
        });
        var owner = await host.HasStudio("owner");
        await Furnish(host, owner);
        for (var n = 0; n < 52; n++)
            await host.Get("/v1/version", await host.HasStudio($"studio-{n}"));

        Assert.Equal(403, (await host.Get("/metrics", owner)).Status);
        var metrics = (await host.Get("/metrics")).Text;
        Assert.Equal(51, Regex.Count(metrics, "pricefloor_studio_requests_total[{]", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.Contains("pricefloor_studio_requests_total{studio=\"other\"} 3\n", metrics, StringComparison.Ordinal);
        Assert.DoesNotMatch(s_others, metrics);
        lock (log.Lines)
        {
            Assert.Contains(log.Lines, line => line.Contains("key owner/owner", StringComparison.Ordinal));
            Assert.DoesNotContain(log.Lines, line => s_others.IsMatch(line));
        }
    }

    [Fact]
    public async Task Many_studios_are_served_with_few_open_and_none_answers_for_another()
    {
        const int All = 60;
        await using var host = HostedService.Start(onServer: IsOnServer,
            configure: with => with.UseSetting("PRICEFLOOR_STUDIOS_OPEN_BYTES", "6000000"));
        var studios = new List<HttpClient>();
        for (var n = 0; n < All; n++)
        {
            studios.Add(await host.HasStudio($"studio-{n}"));
            await host.Put("/v1/channels/web", $$"""{"name":"Shop {{n}}","sells":"retail","currency":"USD"}""", studios[n]);
        }

        var random = new Random(7);
        await Task.WhenAll(Enumerable.Range(0, 8).Select(async _ =>
        {
            for (var i = 0; i < 60; i++)
            {
                int n;
                lock (random)
                    n = random.Next(All);
                Assert.Equal($"Shop {n}", (await host.Get("/v1/channels/web", studios[n])).Json.GetProperty("name").GetString());
                if (i % 4 == 0)
                    Assert.Equal(200, (await host.Put("/v1/channels/web",
                        $$"""{"name":"Shop {{n}}","sells":"retail","currency":"USD","costPerPiece":{{i}}}""", studios[n])).Status);
            }
        }));
        Assert.InRange(host.Services.GetRequiredService<Studios>().Many!.Count, 1, 30);
    }

    private static async Task Furnish(Studio host, HttpClient studio)
    {
        foreach (var (path, document) in ScopeStudio.Stored.Concat(ScopeStudio.Spare))
            Assert.Equal((path, 201), (path, (await host.Put(path, document, studio)).Status));
        foreach (var (method, path, body) in ScopeStudio.Steps)
            Assert.Equal((path, true), (path, (await host.Send(method, path, body.Length == 0 ? null : body, studio)).Status is 200 or 201));
        Assert.Equal(201, (await host.Send("POST", "/v1/keys", """{"name":"opal-shop","scopes":["verdict"]}""", studio)).Status);
        await host.Send("POST", "/v1/movements/batch?source=zircon-book",
            """[{"ref":"1","on":"2027-01-01","sku":"RB-014","channel":"web","pieces":1,"price":58}]""", studio);
    }

    /// <summary>Without what differs from run to run.</summary>
    private static string Settled(Answer answer) => Regex.Replace(answer.Text, "\"requestId\":\"[^\"]*\"|\"next\":\"p[^\"]*\"", "", RegexOptions.None,
        TimeSpan.FromSeconds(10));
}
