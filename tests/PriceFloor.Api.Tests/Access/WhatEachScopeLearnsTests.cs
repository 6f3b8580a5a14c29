using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

/// <summary>
/// Checks the answers of every address, for a key of every scope: nothing in them belongs to another scope. The store is full of telling names and
/// odd figures; each address has its row of requests in <see cref="ScopeRequests"/>, and an address without a row fails.
/// </summary>
public sealed partial class WhatEachScopeLearnsTests
{
    /// <summary>What each kind of key may find in any answer. A row of requests may add to that.</summary>
    private static readonly Dictionary<string, Told> s_told = new()
    {
        ["verdict"] = Told.Nothing,
        ["check"] = Told.Prices,
        ["prices"] = Told.Nothing,
        ["log"] = Told.Nothing,
        ["read"] = Told.Costs | Told.Prices | Told.Listed | Told.Names | Told.Rules | Told.OtherProfile,
        ["write"] = Told.Nothing,
        ["admin"] = Told.Keys,
        ["held"] = Told.Costs | Told.Prices | Told.Listed | Told.Names,
    };

    [Fact]
    public async Task No_answer_of_any_address_holds_what_belongs_to_another_scope()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_METRICS", "on"));
        Assert.Equal(Routes(studio).Order(), ScopeRequests.ByRoute.Keys.Order());
        await Furnish(studio);
        var (secrets, clients) = (await Secrets(studio), await Clients(studio));
        var leaks = new List<string>();
        foreach (var (route, requests) in ScopeRequests.ByRoute)
            foreach (var request in requests)
            {
                foreach (var (key, client) in clients)
                {
                    await Prepare(studio, route);
                    var told = Text(await Send(studio, route, request, client));
                    var may = s_told[key] | request.Also.GetValueOrDefault(key);
                    leaks.AddRange(secrets.Where(secret => !may.HasFlag(secret.Kind) && secret.IsIn(told) && !secret.IsIn(request.Text))
                        .Select(secret => $"{key}: {route} {request.Path} tells \"{secret.Word}\" ({secret.Kind})"));
                }

                await Prepare(studio, route);
                var whole = await Send(studio, route, request, studio.Client);
                if (whole.Status < 300 == request.IsRefused)
                    leaks.Add($"{route} {request.Path} does not answer as its row says: {whole.Status} {whole.Text}");
            }

        Assert.True(leaks.Count == 0, string.Join('\n', leaks));
    }

    [Fact]
    public async Task Every_secret_is_one_that_the_right_key_really_finds()
    {
        await using var studio = new Studio();
        await Furnish(studio);
        var (secrets, all) = (await Secrets(studio), new StringBuilder());
        foreach (var path in new[] { "/v1/profiles", "/v1/designs", "/v1/channels", "/v1/reading-rules", "/v1/price-list", "/v1/keys",
                "/v1/designs/RB-014/floor-price?workings=true", "/v1/profiles/main/requirement?workings=true", "/v1/audit",
                "/v1/quotes/Q-1/figures", "/v1/quotes/Q-DRAFT/figures" })
            all.Append((await studio.Get(path)).Text);
        Assert.True(secrets.Count > 60, $"only {secrets.Count}");
        Assert.All(Enum.GetValues<Told>().Where(kind => kind != Told.Nothing), kind => Assert.Contains(secrets, secret => secret.Kind == kind));
        Assert.All(secrets, secret => Assert.True(secret.IsIn(all.ToString()), secret.Word));
    }

    private static List<string> Routes(Studio studio) =>
        [.. studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint =>
                endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Select(method => $"{method} {endpoint.RoutePattern.RawText}"))];

    private static Task<Answer> Send(Studio studio, string route, ScopeRequest request, HttpClient client) =>
        studio.SendBytes(route.Split(' ')[0], request.Path, request.Body is { } body ? Encoding.UTF8.GetBytes(body) : null, request.Type, client,
            request.Accept is { } accept ? [("Accept", accept)] : []);

    /// <summary>Body and headers, without the headers that count and date every answer.</summary>
    private static string Text(Answer answer) => answer.Text.Replace(answer["X-Request-Id"]!, "", StringComparison.Ordinal)
        + string.Join('\n', answer.Headers.Where(header => header.Key is not ("X-Request-Id" or "RateLimit" or "RateLimit-Policy" or "Date"))
            .Select(header => header.Value));

    private static async Task<Dictionary<string, HttpClient>> Clients(Studio studio)
    {
        var clients = new Dictionary<string, HttpClient>();
        foreach (var scope in s_told.Keys.Where(scope => scope != "held"))
            clients[scope] = await studio.ClientFor(scope);
        var held = await studio.Post("/v1/keys", """{"name":"opal-held","scopes":["read","write"],"profiles":["main","spare"]}""");
        clients["held"] = studio.ClientWith(held.Json.GetProperty("key").GetString());
        return clients;
    }

    private static async Task Furnish(Studio studio)
    {
        foreach (var (path, document) in ScopeStudio.Stored)
            await studio.Has(path, document);
        foreach (var (method, path, body) in ScopeStudio.Steps)
            await studio.Send(method, path, body.Length == 0 ? null : body);
        await Prepare(studio, "");
        await studio.Post("/v1/keys", """{"name":"opal-shop","scopes":["verdict"]}""");
    }

    /// <summary>Restores what a request may have changed.</summary>
    private static async Task Prepare(Studio studio, string route)
    {
        if (route.StartsWith("GET ", StringComparison.Ordinal))
            return;
        foreach (var (path, document) in ScopeStudio.Spare)
            await studio.Has(path, document);
        await studio.Post("/v1/keys", """{"name":"spare-key","scopes":["verdict"]}""");
        await studio.Delete("/v1/keys/new-key");
    }

    private static async Task<List<Secret>> Secrets(Studio studio)
    {
        var asked = await studio.Get("/v1/price-list?channel=web");
        var prices = asked.Json.GetProperty("items").EnumerateArray()
            .SelectMany(item => new[] { item.GetProperty("floorPrice").GetRawText(), item.GetProperty("targetPrice").GetRawText() }).ToHashSet();
        var costs = new HashSet<string>();
        foreach (var path in new[]
        {
            "/v1/profiles/main",
            "/v1/profiles/main/requirement?workings=true",
            "/v1/designs/RB-014",
            "/v1/designs/RB-014/floor-price?workings=true",
            "/v1/channels/web",
            "/v1/quotes/Q-1/figures",
            "/v1/quotes/Q-DRAFT/figures",
        })
            costs.UnionWith(OddFigure().Matches((await studio.Get(path)).Text).Select(figure => figure.Value));
        costs.ExceptWith(prices);
        costs.ExceptWith(ScopeStudio.ListedFigures);
        // Answers about costs may have a floor price on another channel, which is still a price.
        costs.ExceptWith((await studio.Get("/v1/price-list")).Json.GetProperty("items").EnumerateArray()
            .SelectMany(item => new[] { item.GetProperty("floorPrice").GetRawText(), item.GetProperty("targetPrice").GetRawText() }));
        return [.. costs.Select(word => new Secret(word, Told.Costs)), .. prices.Select(word => new Secret(word, Told.Prices)),
            .. ScopeStudio.ListedFigures.Select(word => new Secret(word, Told.Listed)), new("zircon", Told.Costs), new("beryl", Told.Names),
            new("jasper", Told.Rules), new("opal", Told.Keys), new("onyx", Told.OtherProfile)];
    }

    /// <summary>At least five characters with a decimal point among them, so none occurs by chance.</summary>
    [GeneratedRegex(@"(?<![\d.\w-]|\d:)(?=[\d.]{5})\d+\.\d*[1-9]\d*(?![\d:])", RegexOptions.None, 5000)]
    private static partial Regex OddFigure();

    private sealed record Secret(string Word, Told Kind)
    {
        private readonly Regex _word = new(char.IsDigit(Word[0]) ? $@"(?<![\d.]){Regex.Escape(Word)}(?!\d)" : Regex.Escape(Word),
            RegexOptions.IgnoreCase, TimeSpan.FromSeconds(5));

        public bool IsIn(string text) => _word.IsMatch(text);
    }
}

/// <summary>What an answer may reveal, by scope.</summary>
[Flags]
internal enum Told
{
    Nothing = 0,

    /// <summary>Figures and names of profiles, designs' making and channels' terms: read.</summary>
    Costs = 1,

    /// <summary>Floor and target prices: check.</summary>
    Prices = 2,

    /// <summary>Listed prices: read, and the price list.</summary>
    Listed = 4,

    /// <summary>Names of designs and channels that nobody asked about: read, and the price list.</summary>
    Names = 8,

    /// <summary>Reading rules: read.</summary>
    Rules = 16,

    /// <summary>Names of keys: admin.</summary>
    Keys = 32,

    /// <summary>Another profile, its designs and their listed prices: only a key without limits.</summary>
    OtherProfile = 64,
}
