using FluentValidation;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.PriceChecks;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>Behind a reverse proxy below a path: every address in an answer works through the proxy.</summary>
public sealed class SubPathTests
{
    /// <summary>A proxy may leave the path on the requests, or remove it.</summary>
    [Theory]
    [InlineData("/shop/pricefloor", "/shop/pricefloor")]
    [InlineData("/shop/pricefloor/", "/shop/pricefloor")]
    [InlineData("/shop/pricefloor", "")]
    public async Task Every_address_in_an_answer_starts_with_the_base(string setting, string asked)
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_PATH_BASE", setting)
            .ConfigureTestServices(services =>
                services.AddSingleton<IValidator<PriceCheckRequest>>(_ => throw new InvalidOperationException("broken"))));
        const string Base = "/shop/pricefloor";
        Assert.Equal($"{Base}/v1/profiles/main", (await studio.Put(asked + "/v1/profiles/main", Sample.SmallProfile))["Location"]);
        Assert.Equal($"{Base}/v1/keys/shop", (await studio.Post(asked + "/v1/keys", """{"name":"shop","scopes":["read"]}"""))["Location"]);
        Assert.Equal($"{Base}/v1/keys/shop", (await studio.Send("POST", asked + "/v1/keys/shop/rotation", null))["Location"]);
        await studio.Put(asked + "/v1/profiles/other", Sample.SmallProfile);
        Assert.Equal($"<{Base}/v1/profiles?limit=1&after=main>; rel=\"next\"", (await studio.Get(asked + "/v1/profiles?limit=1"))["Link"]);
        Assert.Equal($"<{Base}/v1/keys?limit=1&after=first-admin-key>; rel=\"next\"", (await studio.Get(asked + "/v1/keys?limit=1"))["Link"]);

        foreach (var (answer, slug) in new[]
        {
            (await studio.Get(asked + "/v1/profiles/nope"), "not-found"),
            (await studio.Get(asked + "/nowhere"), "not-found"),
            (await studio.Get(asked + "/v1/profiles", studio.ClientWith(null)), "no-key"),
            (await studio.Get(asked + "/v1/profiles?x=1"), "unreadable-request"),
            (await studio.Post(asked + "/v1/profiles", "{}"), "method-not-allowed"),
            (await studio.Post(asked + "/v1/price-checks", "{}"), "internal"),
        })
        {
            Assert.Equal($"{Base}/problems/{slug}", answer.Json.GetProperty("type").GetString());
            Assert.Equal(200, (await studio.Get(answer.Json.GetProperty("type").GetString()!)).Status);
        }

        Assert.Equal($"{Base}/", (await studio.Get(asked + "/openapi/v1.json")).Json.GetProperty("servers")[0].GetProperty("url").GetString());
        Assert.StartsWith("default-src 'none'; style-src", (await studio.Get(asked + "/docs"))["Content-Security-Policy"], StringComparison.Ordinal);
        Assert.Equal(Base + "/docs", (await studio.Get(asked + "/docs/"))["Location"]);
        Assert.Equal(200, (await studio.Get(asked + "/health/ready", studio.ClientWith(null))).Status);
    }

    [Fact]
    public async Task Only_a_trusted_proxy_and_only_the_base_that_is_set_count()
    {
        await using var studio = new Studio();
        Assert.Equal("/v1/profiles/main", (await studio.Put("/v1/profiles/main", Sample.SmallProfile, null, ("X-Forwarded-Prefix", "/evil"),
            ("X-Forwarded-Host", "evil.example")))["Location"]);
        Assert.Equal("/problems/not-found",
            (await studio.Get("/v1/profiles/nope", headers: ("X-Forwarded-Prefix", "/evil"))).Json.GetProperty("type").GetString());
        (await studio.Get("/pricefloor/v1/profiles")).IsProblem(404, "not-found");
    }
}
