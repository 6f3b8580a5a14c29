using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>The figures of a quote, against the worked example of the model: thirty goblets for one client.</summary>
public sealed class QuoteFiguresTests
{
    private static readonly string[] s_ofAPoorQuote = ["below-floor", "deposit-below-out-of-pocket", "valid-too-long", "seconds-from-commission"];
    private static readonly decimal[] s_hoursTaken = [2.2m, 2.4m, 2.36m, 3m];

    [Theory]
    [InlineData(null)]
    [InlineData("\"GB-030\"")]
    public async Task The_quote_of_goblets_is_as_worked(string? design)
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets(design));
        var figures = (await studio.Get("/v1/quotes/Q-1/figures")).Json;
        // F 3,707.319576; the card fee sits at its maximum of 25, shipping costs 60: 3,792.3196
        Money(figures, ("floor", 3707.32m), ("floorTotal", 3792.32m), ("perPiece", 126.42m), ("rushTotal", 4740.40m), ("price", 4200m));
        // 4,200 - 25 - 60 = 4,115; - 3,707.3196 = 407.6804; (4,115 - 357.2262 - 238.80) / 55.56996 = 63.3251
        Money(figures, ("netProceeds", 4115m), ("aboveFloor", 407.68m), ("earnedPerBenchHour", 63.33m));
        // 357.2262 + 238.80 + 60 = 656.0262
        Money(figures, ("outOfPocket", 656.03m), ("leastDeposit", 656.03m), ("materials", 357.23m), ("bought", 238.80m), ("benchHours", 55.57m));
        Assert.Equal(("meets-floor", true), (figures.GetProperty("verdict").GetString(), figures.GetProperty("carriesItsShare").GetBoolean()));
        var line = figures.GetProperty("lines")[0];
        // 30 / 0.87 = 34.482759; P(Bin(36, 0.87) >= 30) = 0.8204, P(Bin(37, 0.87) >= 30) = 0.9007
        Money(line, ("starts", 34.482759m), ("startsToBeSure", 37), ("materials", 357.23m));
        Assert.Equal(47.07m, line.GetProperty("benchHours").GetDecimal()); // (2,564.197595 + 260) / 60 = 47.06996
        Assert.Empty(Codes(figures).Intersect(["below-floor", "deposit-below-out-of-pocket", "valid-too-long", "quotes-run-over"]));
    }

    [Fact]
    public async Task Without_learning_it_costs_so_much_more()
    {
        await using var studio = await QuotingStudio.Worked();
        var slow = QuotingStudio.Goblets().Replace(""","learning":{"rate":0.85}""", "", StringComparison.Ordinal);
        var figures = (await studio.Post("/v1/quote-figures", slow)).Json;
        Money(figures, ("floorTotal", 3792.32m + 1846.45m)); // worked example of the model
    }

    [Fact]
    public async Task A_quote_that_is_not_stored_has_the_same_figures()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets());
        var stored = (await studio.Get("/v1/quotes/Q-1/figures?workings=true")).Text;
        Assert.Equal(stored.Replace("\"quote\":\"Q-1@1\",", "", StringComparison.Ordinal),
            (await studio.Post("/v1/quote-figures?workings=true", QuotingStudio.Goblets())).Text);
    }

    [Fact]
    public async Task What_a_maker_must_not_overlook_is_a_warning()
    {
        await using var studio = await QuotingStudio.Worked();
        // the deposit is 0.1 * 3,800 = 380.00 of 656.03 that are paid out; a rush share does not lift 3,700 to 3,792.32
        var poor = QuotingStudio.Goblets().Replace("4200.00", "3700", StringComparison.Ordinal)
            .Replace("0.4}", "0.1}", StringComparison.Ordinal).Replace("0.6}", "0.9}", StringComparison.Ordinal)
            .Replace("2027-03-31", "2027-04-03", StringComparison.Ordinal) // 91 days after 2 January
            .Replace("\"runSize\":4}", "\"runSize\":4},\"seconds\":{\"share\":0.5,\"price\":12}", StringComparison.Ordinal);
        var figures = (await studio.Post("/v1/quote-figures", poor)).Json;
        Assert.Equal("below-floor", figures.GetProperty("verdict").GetString());
        Assert.Empty(s_ofAPoorQuote.Except(Codes(figures)));
        Assert.DoesNotContain("valid-too-long", Codes((await studio.Post("/v1/quote-figures",
            poor.Replace("2027-04-03", "2027-04-02", StringComparison.Ordinal))).Json));
    }

    [Fact]
    public async Task A_promise_is_held_against_the_hours_that_are_left()
    {
        await using var studio = await QuotingStudio.Small(); // 2,000 hours a year; 10 days have 54.79
        const string Fifty = """{"profile":"main","channel":"web","promised":"2027-01-12","extra":[{"hours":50}]}""";
        Assert.DoesNotContain("no-hours-left", Codes((await studio.Post("/v1/quote-figures", Fifty)).Json));
        await studio.HasAccepted("Q-1", 5);
        var figures = (await studio.Post("/v1/quote-figures", Fifty)).Json;
        // 54.7945 - 5 = 49.7
        Assert.Contains("The work takes 50 hours, and 49.7 are left until the promised day.",
            figures.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("message").GetString()));
        await studio.Has("/v1/quotes/Q-1/actual", """{"benchHours":5}""");
        Assert.DoesNotContain("no-hours-left", Codes((await studio.Post("/v1/quote-figures", Fifty)).Json));
    }

    [Fact]
    public async Task What_earlier_quotes_ran_over_is_said_from_the_fifth_on_and_raises_nothing()
    {
        await using var studio = await QuotingStudio.Small();
        var before = (await studio.Post("/v1/quote-figures", QuotingStudio.Repair)).Json;
        Assert.Equal("null", before.GetProperty("quotesRun").GetRawText());
        foreach (var (took, i) in s_hoursTaken.Select((took, i) => (took, i)))
            await studio.HasDone($"Q-{i}", 2, took);
        // 1.1, 1.18, 1.2, 1.5: half way between the two in the middle
        var four = (await studio.Post("/v1/quote-figures", QuotingStudio.Repair)).Json;
        Assert.Equal(1.19m, four.GetProperty("quotesRun").GetDecimal());
        Assert.DoesNotContain("quotes-run-over", Codes(four));
        await studio.HasDone("Q-5", 2, 2);
        // 1, 1.1, 1.18, 1.2, 1.5
        var five = (await studio.Post("/v1/quote-figures", QuotingStudio.Repair)).Json;
        Assert.Equal(1.18m, five.GetProperty("quotesRun").GetDecimal());
        Assert.Contains("Your last 5 took 1.18 times the hours quoted; nothing here is raised for that.",
            five.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("message").GetString()));
        Assert.Equal(before.GetProperty("floorTotal").GetRawText(), five.GetProperty("floorTotal").GetRawText());
    }

    [Fact]
    public async Task The_load_is_what_was_accepted_and_is_not_done()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.HasAccepted("Q-1", 12.5m);
        await studio.HasAccepted("Q-2", 3);
        await studio.HasDone("Q-3", 7, 8);
        await studio.Has("/v1/quotes/Q-4", QuotingStudio.Repair);
        await studio.Issues("Q-4");
        Assert.Equal("""
            {"hours":15.5,"quotes":[{"key":"Q-1","profile":"main","benchHours":12.5,"acceptedOn":"2027-01-02","promised":null},
            {"key":"Q-2","profile":"main","benchHours":3,"acceptedOn":"2027-01-02","promised":null}]}
            """.ReplaceLineEndings(""), (await studio.Get("/v1/quote-load?profile=main")).Text);
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        Assert.Equal("""{"hours":0,"quotes":[]}""", (await studio.Get("/v1/quote-load?profile=other")).Text);
        Assert.Equal(["unknown-profile"], (await studio.Get("/v1/quote-load?profile=none")).IsProblem(422, "unknown-reference").Codes);
    }

    [Theory]
    [InlineData(""","deposit":{"share":0.4},"payments":[{"when":"delivery","share":0.5}]""", "#/payments", "not-whole")]
    [InlineData(""","deposit":{"share":0.4}""", "#/deposit", "not-whole")]
    [InlineData(""","bought":[{"name":"x"}]""", "#/bought/0", "exactly-one")]
    [InlineData(""","bought":[{"distance":5}]""", "#/bought/0/rate", "required")]
    [InlineData(""","price":90.005""", "#/price", "too-many-decimals")]
    [InlineData(""","lines":[{"quantity":1.5,"design":{"making":{"minutesPerPiece":5}}}]""", "#/lines/0/quantity", "too-many-decimals")]
    [InlineData(""","lines":[{"quantity":1,"design":{"profile":"other","making":{"minutesPerPiece":5}}}]""", "#/lines/0/design/profile",
        "contradictory")]
    [InlineData(""","lines":[{"quantity":1,"design":{"making":{"minutesPerPiece":5}},"sure":0.4}]""", "#/lines/0/sure", "out-of-range")]
    public async Task What_does_not_fit_is_refused_where_it_is(string more, string pointer, string code)
    {
        await using var studio = await QuotingStudio.Small();
        var answer = await studio.Put("/v1/quotes/Q-1", $$"""{"profile":"main","channel":"web","extra":[{"hours":2}]{{more}}}""");
        answer.IsProblem(422, "invalid-input");
        Assert.Equal((pointer, code), (Assert.Single(answer.Pointers), Assert.Single(answer.Codes)));
    }

    private static void Money(JsonElement figures, params (string Name, decimal Value)[] expected) => Assert.All(expected, one =>
        Assert.Equal((one.Name, one.Value), (one.Name, figures.GetProperty(one.Name).GetDecimal())));

    private static List<string> Codes(JsonElement figures) =>
        [.. figures.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()!)];
}
