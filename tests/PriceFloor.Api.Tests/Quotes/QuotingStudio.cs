using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>Studios that quote, and the quote whose figures the model's worked example gives.</summary>
internal static class QuotingStudio
{
    /// <summary>Nothing but hours, in a studio where an hour costs 30.00.</summary>
    public const string Repair = """
        {"profile":"main","channel":"web","to":"the blue bowl","validUntil":"2027-02-01","extra":[{"name":"Repair","hours":2}],"price":90}
        """;

    /// <summary>One of the thirty goblets.</summary>
    public const string Goblet = """
        {"name":"Twist stem goblet","profile":"main","making":{"steps":[{"name":"torch","handsOnMinutes":120},
          {"name":"anneal","handsOnMinutes":20,"batchSize":12,"goodShare":0.87,"mayBeHurried":false},{"name":"finish the rim","handsOnMinutes":10}],
          "setupMinutes":45,"runSize":4},
         "materials":[{"name":"glass and gas","amount":9.50},{"material":"kiln-kwh","quantity":16,"batchSize":12,"at":"anneal"}]}
        """;

    private const string Direct = """
        {"sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.029,"fixed":0.30,"of":"paid","maximum":25}],"shipping":{"cost":60}}
        """;

    /// <summary>Thirty goblets for one client, with a design of their own or the key of a stored one.</summary>
    public static string Goblets(string? design = null) => $$$"""
        {"profile":"main","channel":"direct","to":"wedding table, May","validUntil":"2027-03-31",
         "lines":[{"name":"Twist stem goblet, tall","quantity":30,"design":{{{design ?? Goblet}}},"learning":{"rate":0.85},"trialPieces":2}],
         "extra":[{"name":"Design and drawing","hours":6,"kind":"design-fee"},{"name":"Fitting","hours":2.5}],
         "bought":[{"name":"Engraver","amount":180},{"name":"Travel","distance":84,"rate":0.70}],"rush":0.25,"price":4200.00,
         "deposit":{"share":0.4},"payments":[{"when":"delivery","share":0.6}],"rights":{"text":"one year, shop display","amount":0}}
        """;

    /// <summary>A small shop in which a quote can be issued.</summary>
    public static async Task<Studio> Small()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        return studio;
    }

    /// <summary>The documents that the worked figures were calculated with: an hour must recover 55.988764.</summary>
    public static async Task<Studio> Worked()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", (await WorkedStudio.Documents())["profiles"]!["main"]!.ToJsonString());
        await studio.Has("/v1/channels/direct", Direct);
        await studio.Has("/v1/designs/GB-030", Goblet);
        return studio;
    }

    /// <summary>Issues a quote that must be issuable.</summary>
    public static async Task<Answer> Issues(this Studio studio, string key, HttpClient? client = null)
    {
        var answer = await studio.Send("POST", $"/v1/quotes/{key}/issue", null, client);
        Assert.Equal((key, 200, "issued"), (key, answer.Status, answer.Json.GetProperty("state").GetString()));
        return answer;
    }

    /// <summary>A quote of so many hours that was accepted and took so many.</summary>
    public static async Task HasDone(this Studio studio, string key, decimal quoted, decimal took)
    {
        await studio.HasAccepted(key, quoted);
        await studio.Has($"/v1/quotes/{key}/actual", FormattableString.Invariant($$"""{"benchHours":{{took}}}"""));
    }

    /// <summary>A quote of so many hours that was accepted.</summary>
    public static async Task HasAccepted(this Studio studio, string key, decimal quoted)
    {
        await studio.Has($"/v1/quotes/{key}", FormattableString.Invariant(
            $$"""{"profile":"main","channel":"web","validUntil":"2027-02-01","extra":[{"hours":{{quoted}}}],"price":9000}"""));
        await studio.Issues(key);
        await studio.Has($"/v1/quotes/{key}/outcome", """{"result":"accepted"}""");
    }

    public static async Task<string> StateOf(this Studio studio, string key, string query = "") =>
        (await studio.Get($"/v1/quotes/{key}{query}")).Json.GetProperty("state").GetString()!;
}
