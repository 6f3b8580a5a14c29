using Microsoft.AspNetCore.Hosting;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

/// <summary>No key is ever written where it does not belong, whatever way it came.</summary>
public sealed class SecretTests
{
    [Fact]
    public async Task No_key_is_in_a_log_or_a_problem_however_it_came()
    {
        var log = new CapturedLog();
        await using var studio = new Studio(configure: host =>
        {
            host.UseSetting("PRICEFLOOR_METRICS", "on");
            log.Of(host);
        });
        await studio.HasASmallShop();
        var secret = (await studio.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""")).Json.GetProperty("key").GetString()!;
        var (other, mistyped) = (KeyText.New(), KeyText.New()[..^1] + "!");
        var answers = new List<Answer>();
        foreach (var key in new[] { secret, other, mistyped, Studio.AdminKey + "x" })
        {
            answers.Add(await studio.Get("/v1/profiles", studio.ClientWith(key)));
            answers.Add(await studio.Get("/v1/keys", studio.ClientWith(key)));
        }

        foreach (var key in new[] { secret, other, other[..40] })
            foreach (var client in new[] { studio.Client, studio.ClientWith(null) })
            {
                answers.Add(await studio.Get($"/v1/profiles?key={key}", client));
                answers.Add(await studio.Get($"/v1/profiles?{key}", client));
                answers.Add(await studio.Get($"/v1/profiles?after={key}&limit=0", client));
                answers.Add(await studio.Get($"/v1/profiles/{key}", client));
                answers.Add(await studio.Get($"/{key}", client));
                answers.Add(await studio.Delete($"/v1/keys/{key}", client));
                answers.Add(await studio.Post("/v1/price-checks", $$"""{"sku":"{{key}}","channel":"web","price":58}""", client));
                answers.Add(await studio.Post("/v1/price-checks", $$"""{"{{key}}":1}""", client));
                answers.Add(await studio.Post("/v1/keys", $$"""{"name":"x","scopes":["{{key}}"]}""", client));
                answers.Add(await studio.Post("/v1/price-checks/batch", $$"""[{"sku":"{{key}}","channel":"web","price":58}]""", client));
                answers.Add(await studio.Put("/v1/profiles/x", Sample.SmallProfile, client, ("If-Match", key)));
            }

        answers.Add(await studio.Get("/v1/keys"));
        Assert.True(answers.Count(answer => answer.Status >= 400) > 50);
        var written = string.Join('\n', log.Lines);
        Assert.True(log.Lines.Count > answers.Count / 2);
        foreach (var key in new[] { secret, other, other[..40], mistyped, Studio.AdminKey })
        {
            Assert.DoesNotContain(key, written, StringComparison.Ordinal);
            Assert.All(answers,
                answer => Assert.DoesNotContain(key, answer.Text + string.Join(' ', answer.Headers.Values), StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_key_in_an_address_is_refused_with_the_advice_to_rotate_it()
    {
        await using var studio = new Studio();
        var answer = (await studio.Get($"/v1/profiles?key={KeyText.New()}")).IsProblem(400, "unreadable-request");
        Assert.Equal("key-in-address", Assert.Single(answer.Codes));
        Assert.Contains("rotate", (await studio.Get($"/v1/profiles?key={KeyText.New()}", studio.ClientWith(null))).IsProblem(401, "no-key")
            .Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }
}
