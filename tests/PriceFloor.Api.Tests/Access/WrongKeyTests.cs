using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

/// <summary>Wrong keys from one address are counted strictly and separately from everything else.</summary>
public sealed class WrongKeyTests
{
    [Fact]
    public async Task The_twentieth_wrong_key_is_reported_and_the_next_must_wait()
    {
        await using var studio = From("198.51.100.7");
        for (var i = 0; i < 20; i++)
            (await Try(studio, $"wrong-{i}")).IsProblem(401, "no-key");
        var answer = (await Try(studio, "wrong-21")).IsProblem(429, "too-many-requests");
        Assert.Equal("60", answer["Retry-After"]);
        Assert.StartsWith("\"default\";r=599", answer["RateLimit"], StringComparison.Ordinal); // the ordinary limit is not used up

        studio.Clock.Advance(TimeSpan.FromSeconds(59));
        Assert.Equal("1", (await Try(studio, "wrong-22")).IsProblem(429, "too-many-requests")["Retry-After"]);
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        (await Try(studio, "wrong-23")).IsProblem(401, "no-key");
    }

    [Fact]
    public async Task A_right_key_still_opens_from_there_and_other_addresses_are_not_concerned()
    {
        await using var studio = From("198.51.100.7", ("PRICEFLOOR_WRONG_KEYS_PER_MINUTE", "2"));
        foreach (var status in new[] { 401, 401, 429, 429 })
            Assert.Equal(status, (await Try(studio, "wrong")).Status);
        Assert.Equal(200, (await Try(studio, Studio.AdminKey)).Status);
        Assert.Equal(401, (await studio.Get("/v1/profiles", studio.ClientWith(null))).Status); // a missing key is not a wrong key
        Assert.Equal(401, (await Try(studio, "wrong", ("X-Test-Address", "198.51.100.8"))).Status);
    }

    [Fact]
    public async Task Only_a_trusted_proxy_can_report_the_address()
    {
        (string, string)[] one = [("PRICEFLOOR_WRONG_KEYS_PER_MINUTE", "1"), ("PRICEFLOOR_TRUSTED_PROXIES", "198.51.100.7")];
        await using var behind = From("198.51.100.7", one);
        foreach (var (client, status) in new[]
        {
            ("203.0.113.1", 401),
            ("203.0.113.1", 429),
            ("203.0.113.2", 401),
            ("203.0.113.2, 203.0.113.1", 429),
        })
            Assert.Equal((client, status), (client, (await Try(behind, "wrong", ("X-Forwarded-For", client))).Status));

        await using var direct = From("198.51.100.9", one);
        foreach (var (client, status) in new[] { ("203.0.113.1", 401), ("203.0.113.2", 429) })
            Assert.Equal((client, status), (client, (await Try(direct, "wrong", ("X-Forwarded-For", client))).Status));
    }

    [Theory]
    [InlineData("198.51.100.7", "198.51.100.0/24")]
    [InlineData("198.51.100.7", "203.0.113.9, 198.51.100.7/32")]
    [InlineData("::ffff:198.51.100.7", "198.51.100.0/24")]
    [InlineData("2001:db8:1:2::9", "2001:db8:1::/48")]
    public async Task A_trusted_network_of_proxies_reports_the_address_however_many_are_in_a_row(string proxy, string trusted)
    {
        await using var studio = From(proxy, ("PRICEFLOOR_WRONG_KEYS_PER_MINUTE", "1"), ("PRICEFLOOR_TRUSTED_PROXIES", trusted));
        foreach (var (client, status) in new[]
        {
            ("192.0.2.1", 401),
            ("192.0.2.1", 429),
            ("192.0.2.2", 401),
            ($"192.0.2.1, {proxy}", 429),
            ($"192.0.2.9, 192.0.2.3, {proxy}", 401),
            ("192.0.2.3", 429),
        })
            Assert.Equal((client, status), (client, (await Try(studio, "wrong", ("X-Forwarded-For", client))).Status));
    }

    [Fact]
    public async Task An_address_just_outside_a_trusted_network_is_not_believed()
    {
        await using var studio = From("198.51.101.0", ("PRICEFLOOR_WRONG_KEYS_PER_MINUTE", "1"), ("PRICEFLOOR_TRUSTED_PROXIES", "198.51.100.0/24"));
        foreach (var (client, status) in new[] { ("192.0.2.1", 401), ("192.0.2.2", 429) })
            Assert.Equal((client, status), (client, (await Try(studio, "wrong", ("X-Forwarded-For", client))).Status));
    }

    [Fact]
    public async Task A_whole_IPv6_network_counts_as_one_address_and_a_mapped_IPv4_as_itself()
    {
        await using var studio = From("2001:db8:1:2::1", ("PRICEFLOOR_WRONG_KEYS_PER_MINUTE", "1"));
        foreach (var (address, status) in new[]
        {
            ("2001:db8:1:2::1", 401),
            ("2001:db8:1:2:ffff::9", 429),
            ("2001:db8:1:3::1", 401),
            ("::ffff:198.51.100.7", 401),
            ("198.51.100.7", 429),
            ("::ffff:198.51.100.8", 401),
        })
            Assert.Equal((address, status), (address, (await Try(studio, "wrong", ("X-Test-Address", address))).Status));
    }

    private static Task<Answer> Try(Studio studio, string key, params (string, string)[] headers) =>
        studio.Get("/v1/profiles", studio.ClientWith(key), headers);

    /// <summary>A studio whose requests have an address: the test server itself gives none.</summary>
    private static Studio From(string address, params (string Name, string Value)[] settings) => new(configure: host =>
    {
        foreach (var (name, value) in settings)
            host.UseSetting(name, value);
        host.ConfigureTestServices(services => services.AddSingleton<IStartupFilter>(new ComingFrom(address)));
    });

    private sealed class ComingFrom(string address) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((HttpContext context, RequestDelegate then) =>
            {
                context.Connection.RemoteIpAddress = IPAddress.Parse(context.Request.Headers["X-Test-Address"].FirstOrDefault() ?? address);
                return then(context);
            });
            next(app);
        };
    }
}
