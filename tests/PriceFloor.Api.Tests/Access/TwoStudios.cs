using Xunit;

namespace PriceFloor.Api.Tests.Access;

/// <summary>A store that two studios share, each with a profile, a design and a quote.</summary>
internal static class TwoStudios
{
    /// <summary>A key for two profiles, one of which is not there.</summary>
    public static async Task<HttpClient> Held(Studio studio, params string[] scopes)
    {
        var made = await studio.Post("/v1/keys", $$"""{"name":"held","scopes":["{{string.Join("\",\"", scopes)}}"],"profiles":["main","second"]}""");
        return studio.ClientWith(made.Json.GetProperty("key").GetString());
    }

    public static async Task<Studio> Both()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/GLOBE", """{"profile":"other","making":{"piecesPerDay":3},"aliases":["globe-alias"]}""");
        await studio.Has("/v1/designs/GLOBE/prices/web", """{"price":90.00}""");
        foreach (var (key, profile) in new[] { ("Q-MAIN", "main"), ("Q-OTHER", "other") })
            await HasAQuote(studio, key, profile);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        return studio;
    }

    private static async Task HasAQuote(Studio studio, string key, string profile)
    {
        await studio.Has($"/v1/quotes/{key}",
            $$"""{"profile":"{{profile}}","channel":"web","extra":[{"hours":1}],"price":90,"validUntil":"2027-02-01"}""");
        Assert.Equal(200, (await studio.Send("POST", $"/v1/quotes/{key}/issue", null)).Status);
        await studio.Has($"/v1/quotes/{key}/outcome", """{"result":"accepted"}""");
        await studio.Has($"/v1/quotes/{key}/actual", """{"benchHours":2}""");
    }
}
