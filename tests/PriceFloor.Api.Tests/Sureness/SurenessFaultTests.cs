using PriceFloor.Api.Tests.Scenarios;
using PriceFloor.Api.Tests.WhatIfs;
using Xunit;

namespace PriceFloor.Api.Tests.Sureness;

/// <summary>What cannot be drawn is said, and where.</summary>
public sealed class SurenessFaultTests(WhatIfTests.Worked worked) : IClassFixture<WhatIfTests.Worked>
{
    private const string Weeks = """{"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}}""";

    [Theory]
    [InlineData("""{"profile":"main"}""", "exactly-one", "#/ranges")]
    [InlineData("""{"profile":"main","scenario":"x","ranges":[WEEKS]}""", "exactly-one", "#/ranges")]
    [InlineData("""{"profile":"main","ranges":[]}""", "required", "#/ranges")]
    [InlineData("""{"profile":"main","ranges":[{"of":"main","at":"/calendar/weeksPerYear","to":45}]}""", "required", "#/ranges")]
    [InlineData("""{"profile":"main","ranges":[WEEKS,WEEKS]}""", "duplicate", "#/ranges/1")]
    [InlineData("""{"profile":"main","channel":"web","ranges":[WEEKS]}""", "required", "#/sku")]
    [InlineData("""{"profile":"main","sku":"RB-014","price":5,"ranges":[WEEKS]}""", "required", "#/channel")]
    [InlineData("""{"profile":"main","draws":1000,"ranges":[WEEKS]}""", "not-one-of", "#/draws")]
    [InlineData("""{"profile":"main","sure":0.999,"ranges":[WEEKS]}""", "out-of-range", "#/sure")]
    [InlineData("""{"profile":"main","ranges":[{"of":"main","at":"/nothing","to":{"low":1,"high":2}}]}""", "leads-nowhere", "#/ranges/0/at")]
    [InlineData("""{"profile":"main","ranges":[{"of":"main","at":"/currency","by":{"low":1,"high":2}}]}""", "not-a-number", "#/ranges/0/at")]
    [InlineData("""{"profile":"main","ranges":[{"of":"main","at":"/soldShare","to":{"low":1,"likely":1.2,"high":2}}]}""", "out-of-range",
        "#/ranges/0")]
    public async Task A_question_that_breaks_a_rule_says_which(string request, string code, string pointer)
    {
        var answer = await worked.Studio.Post("/v1/sureness", request.Replace("WEEKS", Weeks, StringComparison.Ordinal));
        answer.IsProblem(422, "invalid-input");
        var error = Assert.Single(answer.Json.GetProperty("errors").EnumerateArray());
        Assert.Equal((code, pointer), (error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString()));
    }

    [Theory]
    [InlineData("""{"profile":"nobody","ranges":[WEEKS]}""", "#/profile")]
    [InlineData("""{"profile":"main","sku":"nothing","ranges":[WEEKS]}""", "#/sku")]
    [InlineData("""{"profile":"main","sku":"RB-014","channel":"nowhere","ranges":[WEEKS]}""", "#/channel")]
    [InlineData("""{"profile":"main","scenario":"none"}""", "#/scenario")]
    public async Task A_name_that_leads_nowhere_is_an_unknown_reference(string request, string pointer)
    {
        var answer = await worked.Studio.Post("/v1/sureness", request.Replace("WEEKS", Weeks, StringComparison.Ordinal));
        answer.IsProblem(422, "unknown-reference");
        Assert.Equal(pointer, answer.Json.GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    [Fact]
    public async Task More_than_50_ranges_are_refused()
    {
        var many = string.Join(',', Enumerable.Range(0, 51).Select(line =>
            $$"""{"of":"main","at":"/expenses/0/amount","by":{"low":0.99,"high":1.01},"together":"line {{line}}"}"""));
        (await worked.Studio.Post("/v1/sureness", $$"""{"profile":"main","ranges":[{{many}}]}""")).IsProblem(422, "invalid-input");
    }

    /// <summary>Bench time of nothing has no answer: half a year's draws fall below 0.01 hours.</summary>
    [Fact]
    public async Task Ranges_that_leave_no_answer_in_many_draws_are_too_wide()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/profiles/idle",
            """{"currency":"USD","calendar":{"weeksPerYear":40,"daysPerWeek":1,"hoursPerDay":1,"benchShare":0.01}}""");
        var answer = await studio.Post("/v1/sureness",
            """{"profile":"idle","ranges":[{"of":"idle","at":"/calendar/benchShare","to":{"low":0,"high":0.02}}]}""");
        answer.IsProblem(422, "cannot-compute");
        Assert.Equal("ranges-too-wide", answer.Json.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_draw_beyond_what_the_field_may_be_is_held_there_and_warned_about()
    {
        var answer = await worked.Studio.Post("/v1/sureness",
            """{"profile":"main","ranges":[{"of":"main","at":"/calendar/weeksPerYear","to":{"low":45,"high":52}}]}"""); // up to 46 + 1.25 x 6 = 53.5
        var warning = answer.Json.GetProperty("warnings").EnumerateArray().Single(one => one.GetProperty("code").GetString() == "held-at-bound");
        Assert.Equal("#/ranges/0", warning.GetProperty("pointer").GetString());
        Assert.Equal(0, answer.Json.GetProperty("notPossible").GetInt32());
    }

    [Fact]
    public async Task A_stored_scenario_has_the_ranges_as_well()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/scenarios/guesses", $$"""{"profile":"main","changes":{{SurenessTests.Ranges}}}""");
        var stored = (await studio.Post("/v1/sureness", """{"profile":"main","sku":"RB-014","scenario":"guesses"}""")).Json;
        Assert.Equal("""{"tenth":52.64,"middle":60.15,"nineTenths":70.40}""", stored.GetProperty("floor").GetRawText());
        Assert.Equal("guesses@1", stored.GetProperty("basis").GetProperty("scenario").GetString());
    }

    [Fact]
    public async Task Nothing_is_written()
    {
        await using var studio = await WorkedStudio.Create();
        var before = (await studio.Get("/v1/audit?limit=1000")).Text;
        Assert.Equal(200, (await studio.Post("/v1/sureness", $$"""{"profile":"main","draws":1024,"ranges":[{{Weeks}}]}""")).Status);
        Assert.Equal(before, (await studio.Get("/v1/audit?limit=1000")).Text);
    }

    [Fact]
    public async Task At_most_two_are_computed_at_once()
    {
        await using var studio = await WorkedStudio.Create();
        var request = $$"""{"profile":"main","sku":"RB-014","channel":"web","draws":16384,"pinned":true,"ranges":{{SurenessTests.Ranges}}}""";
        var answers = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => Task.Run(() => studio.Post("/v1/sureness", request))));
        Assert.Contains(answers, answer => answer.Status == 200);
        var refused = answers.Where(answer => answer.Status != 200).ToList();
        Assert.NotEmpty(refused);
        Assert.All(refused, answer =>
        {
            answer.IsProblem(429, "too-many-requests");
            Assert.Equal("1", answer["Retry-After"]);
        });
        Assert.Single(answers.Where(answer => answer.Status == 200).Select(answer => answer.Text).Distinct());
        Assert.Equal(200, (await studio.Post("/v1/sureness", $$"""{"profile":"main","draws":1024,"ranges":[{{Weeks}}]}""")).Status);
    }

    [Fact]
    public async Task It_ends_when_the_caller_goes_away()
    {
        await using var studio = await WorkedStudio.Create();
        using var gone = new CancellationTokenSource(TimeSpan.FromMilliseconds(50));
        using var content = new StringContent($$"""{"profile":"main","sku":"RB-014","draws":16384,"pinned":true,"ranges":{{SurenessTests.Ranges}}}""",
            System.Text.Encoding.UTF8, "application/json");
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => studio.Client.PostAsync("/v1/sureness", content, gone.Token));
        for (var i = 0; i < 3; i++) // its place is free again
            Assert.Equal(200, (await studio.Post("/v1/sureness", $$"""{"profile":"main","draws":1024,"ranges":[{{Weeks}}]}""")).Status);
    }
}
