using System.Text.Json;
using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>
/// A line that leaves to the log how its work gets quicker, in the studio of the evidence's worked example: 144 pieces begun, each doubling leaves
/// 0.9257 of the time.
/// </summary>
public sealed class QuotedLearningTests
{
    /// <summary>As the bench log says of it: 48.20 minutes a piece, of which 8 cannot be hurried.</summary>
    private const string Today = """
        {"name":"River drop pendant","profile":"main","soldShare":1,"materials":[{"name":"Glass","amount":6}],"making":{"steps":
        [{"name":"torch","handsOnMinutes":40.20},{"name":"anneal","handsOnMinutes":8,"mayBeHurried":false}]}}
        """;

    private const string Told = """
        [{"pointer":"#/lines/0/learning/rate","value":0.9257},{"pointer":"#/lines/0/learning/madeBefore","value":144}]
        """;

    [Fact]
    public async Task The_next_sixty_pieces_take_what_the_evidence_says()
    {
        await using var studio = await ADayLater();
        var figures = (await studio.Post("/v1/quote-figures", Asking("{}"))).Json;
        // Worked example of the evidence: the next 60 take 47.37 minutes each, so together as many hours. By the rate and minutes that are shown,
        // (40.20 * 58.765913 + 60 * 8) / 60 = 47.3732, where 58.765913 = sum of ((144 + k)/144)^log2(0.9257) for k = 1 to 60.
        Assert.Equal(47.3732m, figures.GetProperty("benchHours").GetDecimal());
        var evidence = (await studio.Get($"/v1/designs/RB-014/evidence?to={RiverDropLog.LastDay}")).Json.GetProperty("learning");
        Assert.Equal("0.9257 47.37", $"{evidence.GetProperty("rate").GetRawText()} {evidence.GetProperty("nextRun").GetRawText()}");
        Assert.Equal(2491.80m, figures.GetProperty("floor").GetDecimal()); // 45.00 * 47.373162 + 60 * 6.00 = 2,491.7923
        Assert.Equal(Told.Trim(), Learned(figures));
        Assert.Equal("""{"profile":"main@1","channel":"web@1","designs":["RB-014@2"],"log":"m0+b12"}""", figures.GetProperty("basis").GetRawText());
    }

    [Fact]
    public async Task It_is_as_if_the_caller_had_said_it()
    {
        await using var studio = await ADayLater();
        var said = (await studio.Post("/v1/quote-figures?workings=true", Asking("""{"rate":0.9257,"madeBefore":144}"""))).Json;
        var filled = (await studio.Post("/v1/quote-figures?workings=true", Asking("{}"))).Json;
        foreach (var field in said.EnumerateObject().Where(field => field.Name is not ("assumed" or "basis")))
            Assert.Equal(field.Value.GetRawText(), filled.GetProperty(field.Name).GetRawText());
        Assert.Equal(("[]", false), (Learned(said), said.GetProperty("basis").TryGetProperty("log", out _)));
    }

    [Fact]
    public async Task What_the_caller_says_wins()
    {
        await using var studio = await ADayLater();
        var twelve = (await studio.Post("/v1/quote-figures", Asking("""{"madeBefore":12}"""))).Json;
        // (40.20 * sum of ((12 + k)/12)^log2(0.9257) for k = 1 to 60 + 480) / 60
        Assert.Equal(43.3572m, twelve.GetProperty("benchHours").GetDecimal());
        Assert.Equal("""[{"pointer":"#/lines/0/learning/rate","value":0.9257}]""", Learned(twelve));
        var none = (await studio.Post("/v1/quote-figures", Asking("""{"rate":1}"""))).Json;
        Assert.Equal((48.2m, "[]"), (none.GetProperty("benchHours").GetDecimal(), Learned(none)));
        // With a rate, the design's minutes are those of the first piece, as ever: (40.20 * sum of k^log2(0.9257) + 480) / 60.
        Assert.Equal(36.4711m, (await studio.Post("/v1/quote-figures", Asking("""{"rate":0.9257}"""))).Json.GetProperty("benchHours").GetDecimal());
    }

    [Fact]
    public async Task Where_the_log_shows_no_learning_nothing_is_learned_and_the_answer_says_so()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/designs/RB-014", Today);
        foreach (var position in new[] { "m0+b0", "m0+b12" })
        {
            var figures = (await studio.Post("/v1/quote-figures", Asking("{}"))).Json;
            Assert.Equal(48.2m, figures.GetProperty("benchHours").GetDecimal()); // 60 * 48.20 / 60
            Assert.Equal("""[{"pointer":"#/lines/0/learning/rate","value":1}]""", Learned(figures));
            Assert.Equal(position, figures.GetProperty("basis").GetProperty("log").GetString());
            await studio.BenchSheet("source=bench-book", RiverDropLog.Bench); // days that are still to come: today is 2 January
        }
    }

    [Fact]
    public async Task A_curve_of_one_step_says_nothing_of_another_that_could_be_learned()
    {
        await using var studio = await ADayLater(RiverDropLog.Bench.Replace("ref,on,sku,", "ref,on,step,sku,", StringComparison.Ordinal)
            .Replace(",RB-014,", ",torch,RB-014,", StringComparison.Ordinal));
        Assert.Contains("madeBefore", Learned((await studio.Post("/v1/quote-figures", Asking("{}"))).Json), StringComparison.Ordinal);
        await studio.Has("/v1/designs/RB-014", Today.Replace(",\"mayBeHurried\":false", "", StringComparison.Ordinal));
        Assert.Equal("""[{"pointer":"#/lines/0/learning/rate","value":1}]""",
            Learned((await studio.Post("/v1/quote-figures", Asking("{}"))).Json));
    }

    [Fact]
    public async Task A_design_of_the_quotes_own_has_no_log()
    {
        await using var studio = await ADayLater();
        foreach (var refused in new[]
        {
            await studio.Post("/v1/quote-figures", Asking("{}", Today)), await studio.Put("/v1/quotes/Q-1", Asking("""{"madeBefore":3}""", Today)),
        })
            Assert.Equal(["#/lines/0/learning/rate"], refused.IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task A_draft_follows_the_log_until_it_is_issued()
    {
        await using var studio = await ADayLater();
        await studio.Has("/v1/quotes/Q-1", Asking("{}").Replace("\"lines\"", "\"price\":4000,\"validUntil\":\"2028-02-01\",\"lines\"",
            StringComparison.Ordinal));
        Assert.Equal("{}", (await studio.Get("/v1/quotes/Q-1")).Json.GetProperty("lines")[0].GetProperty("learning").GetRawText());
        var before = (await studio.Get("/v1/quotes/Q-1/figures")).Json;
        var moment = studio.Clock.GetUtcNow().AddSeconds(30);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        // As many pieces in one more load of twelve, at the minutes of the last one: the curve has 156 pieces now.
        await studio.BenchSheet("source=more", $"ref,on,sku,started,good,minutes\n13,{RiverDropLog.On(360)},RB-014,12,12,571\n");
        var after = (await studio.Get("/v1/quotes/Q-1/figures")).Json;
        Assert.Contains("\"#/lines/0/learning/madeBefore\",\"value\":156", Learned(after), StringComparison.Ordinal);
        Assert.Equal(before.GetRawText(), (await studio.Get($"/v1/quotes/Q-1/figures?asOf={moment:yyyy-MM-ddTHH:mm:ss}Z")).Json.GetRawText());

        await studio.Issues("Q-1");
        await studio.BenchSheet("source=more", $"ref,on,sku,started,good,minutes\n14,{RiverDropLog.On(361)},RB-014,12,12,480\n");
        var issued = (await studio.Get("/v1/quotes/Q-1/figures")).Json;
        Assert.Equal((Learned(after), "m0+b13", after.GetProperty("floorTotal").GetRawText()),
            (Learned(issued), issued.GetProperty("basis").GetProperty("log").GetString(), issued.GetProperty("floorTotal").GetRawText()));
        Assert.True(issued.GetProperty("moved").GetProperty("costsMoved").GetBoolean());
        Assert.True(issued.GetProperty("moved").GetProperty("floorTotal").GetDecimal() < issued.GetProperty("floorTotal").GetDecimal());
    }

    [Fact]
    public async Task A_key_held_to_a_profile_learns_from_its_own_designs_only()
    {
        await using var studio = await ADayLater();
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["main"]}""");
        using var held = studio.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal((await studio.Post("/v1/quote-figures", Asking("{}"))).Text, (await studio.Post("/v1/quote-figures", Asking("{}"), held)).Text);
        await studio.Has("/v1/profiles/other", RiverDropLog.Profile);
        var elsewhere = await studio.Post("/v1/keys", """{"name":"elsewhere","scopes":["read"],"profiles":["other"]}""");
        using var stranger = studio.ClientWith(elsewhere.Json.GetProperty("key").GetString());
        var refused = await studio.Post("/v1/quote-figures", Asking("{}").Replace("\"main\"", "\"other\"", StringComparison.Ordinal), stranger);
        Assert.Equal(["unknown-design"], refused.IsProblem(422, "unknown-reference").Codes);
    }

    [Fact]
    public async Task A_question_how_sure_a_quote_is_has_the_same_learning()
    {
        await using var studio = await ADayLater();
        foreach (var (key, learning) in new[] { ("Q-1", "{}"), ("Q-2", """{"rate":0.9257,"madeBefore":144}""") })
            await studio.Has($"/v1/quotes/{key}", Asking(learning).Replace("\"lines\"", "\"price\":2700,\"lines\"", StringComparison.Ordinal));
        const string Question = """
            {"profile":"main","quote":"Q-1","draws":1024,
             "ranges":[{"of":"RB-014","at":"/making/steps/0/handsOnMinutes","to":{"low":36,"likely":40.2,"high":50}}]}
            """;
        var (left, said) = ((await studio.Post("/v1/sureness", Question)).Json,
            (await studio.Post("/v1/sureness", Question.Replace("Q-1", "Q-2", StringComparison.Ordinal))).Json);
        Assert.Equal("m0+b12", left.GetProperty("basis").GetProperty("log").GetString());
        foreach (var field in said.EnumerateObject().Where(field => field.Name != "basis"))
            Assert.Equal(field.Value.GetRawText(), left.GetProperty(field.Name).GetRawText());
    }

    /// <summary>The bench log of a year, and today's minutes in the design.</summary>
    private static async Task<Studio> ADayLater(string? bench = null)
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.BenchSheet("source=bench-book", bench ?? RiverDropLog.Bench);
        await studio.Has("/v1/designs/RB-014", Today);
        studio.Clock.Advance(TimeSpan.FromDays(364)); // 2028-01-01, day 365
        return studio;
    }

    private static string Asking(string learning, string design = "\"RB-014\"") => $$"""
        {"profile":"main","channel":"web","lines":[{"quantity":60,"design":{{design}},"learning":{{learning}}}]}
        """;

    private static string Learned(JsonElement figures)
    {
        var learned = figures.GetProperty("assumed").EnumerateArray()
            .Where(one => one.GetProperty("pointer").GetString()!.Contains("/learning/", StringComparison.Ordinal));
        return $"[{string.Join(',', learned.Select(one => one.GetRawText()))}]";
    }
}
