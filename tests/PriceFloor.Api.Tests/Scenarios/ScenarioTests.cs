using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Scenarios;

/// <summary>Scenarios are documents like the others; a what-if takes them by key.</summary>
public sealed class ScenarioTests
{
    private const string Rent = """{"name":"rent +10 %","profile":"main","changes":[{"of":"main","at":"/expenses/Bench rent/amount","by":1.10}]}""";

    [Fact]
    public async Task A_stored_scenario_answers_as_the_same_changes_in_the_request_do()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/scenarios/rent", Rent);
        var stored = (await studio.Post("/v1/what-ifs", """{"profile":"main","scenarios":["rent"]}""")).Json;
        var inline = Rent.Replace("\"profile\":\"main\",", "", StringComparison.Ordinal);
        var sent = (await studio.Post("/v1/what-ifs", $$"""{"profile":"main","scenarios":[{{inline}}]}""")).Json;
        Assert.Equal(sent.GetProperty("scenarios").GetRawText(), stored.GetProperty("scenarios").GetRawText());
        Assert.Equal(sent.GetProperty("list").GetRawText(), stored.GetProperty("list").GetRawText());
        Assert.Equal("""["rent@1"]""", stored.GetProperty("basis").GetProperty("scenarios").GetRawText());
    }

    [Fact]
    public async Task It_has_revisions_and_what_GET_gives_can_be_sent_back()
    {
        await using var studio = await WorkedStudio.Create();
        const string Text = """
            {"profile":"main","changes":[{"of":"main","at":"/pay","to":null},
             {"of":"main","at":"/expenses/-","to":{"name":"x","amount":1.50,"per":"year"}},
             {"of":"main","at":"/soldShare","by":{"low":0.9,"likely":1,"high":1.0},"ends":"never","together":"sales"},
             {"of":"main","merge":{"pay":null}}]}
            """;
        Assert.Equal(201, (await studio.Put("/v1/scenarios/year", Text)).Status);
        var got = (await studio.Get("/v1/scenarios/year")).Text;
        Assert.Contains("""{"of":"main","at":"/pay","to":null""", got, StringComparison.Ordinal);
        var again = await studio.Put("/v1/scenarios/year", got);
        Assert.Equal((200, "\"1\""), (again.Status, again["ETag"]));
        await studio.Has("/v1/scenarios/year", Rent);
        Assert.Equal("\"2\"", (await studio.Get("/v1/scenarios/year"))["ETag"]);
        Assert.Equal(got, (await studio.Get("/v1/scenarios/year/revisions/1")).Text);
        Assert.Equal(204, (await studio.Delete("/v1/scenarios/year")).Status);
        (await studio.Post("/v1/what-ifs", """{"profile":"main","scenarios":["year"]}""")).IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task A_profile_with_a_scenario_is_in_use()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/scenarios/dear", """{"profile":"main","changes":[]}""");
        var refused = await studio.Delete("/v1/profiles/main");
        refused.IsProblem(409, "in-use");
        Assert.Equal("""[{"kind":"scenario","key":"dear"}]""", refused.Json.GetProperty("usedBy").GetRawText());
        (await studio.Put("/v1/scenarios/other", """{"profile":"none","changes":[]}""")).IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task A_change_that_says_nothing_or_too_much_is_not_stored()
    {
        await using var studio = await WorkedStudio.Create();
        var answer = await studio.Put("/v1/scenarios/bad",
            """{"profile":"main","changes":[{"of":"main","at":"/name"},{"of":"main","at":"x","to":1,"by":2}]}""");
        answer.IsProblem(422, "invalid-input");
        Assert.Equal(["#/changes/0", "#/changes/1"],
            answer.Json.GetProperty("errors").EnumerateArray().Select(one => one.GetProperty("pointer").GetString()));
    }

    [Fact]
    public async Task A_key_that_is_limited_to_other_profiles_finds_no_scenario_there()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/scenarios/rent", Rent);
        var key = (await studio.Post("/v1/keys", """{"name":"held","scopes":["read","write"],"profiles":["other"]}""")).Json;
        var held = studio.ClientWith(key.GetProperty("key").GetString());
        (await studio.Get("/v1/scenarios/rent", held)).IsProblem(404, "not-found");
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/scenarios", held)).Text);
        (await studio.Post("/v1/what-ifs", """{"profile":"other","scenarios":["rent"]}""", held)).IsProblem(422, "unknown-reference");
        (await studio.Post("/v1/what-ifs", """{"profile":"main","scenarios":[{"changes":[]}]}""", held)).IsProblem(422, "unknown-reference");
        (await studio.Post("/v1/what-ifs", """{"profile":"other","scenarios":[{"changes":[{"of":"RB-014","at":"/name","to":"x"}]}]}""", held))
            .IsProblem(422, "invalid-input");
        (await studio.Put("/v1/scenarios/rent", """{"profile":"other","changes":[]}""", held)).IsProblem(409, "in-use");
        (await studio.Put("/v1/scenarios/mine", """{"profile":"main","changes":[]}""", held)).IsProblem(422, "unknown-reference");
        Assert.Equal(201, (await studio.Put("/v1/scenarios/mine", """{"profile":"other","changes":[]}""", held)).Status);
    }

    [Fact]
    public async Task As_of_an_earlier_moment_the_scenario_and_the_documents_are_those_of_then()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/scenarios/rent", Rent);
        const string Ask = """{"profile":"main","scenarios":["rent"],"list":"all"}""";
        var then = (await studio.Post("/v1/what-ifs", Ask)).Text;
        studio.Clock.Advance(TimeSpan.FromDays(30));
        await studio.Has("/v1/scenarios/rent", Rent.Replace("1.10", "2", StringComparison.Ordinal));
        await studio.Has("/v1/channels/web", """{"sells":"retail","currency":"USD"}""");
        Assert.Equal(then, (await studio.Post("/v1/what-ifs?asOf=2027-01-02T10:00:00Z", Ask)).Text);
        Assert.NotEqual(then, (await studio.Post("/v1/what-ifs", Ask)).Text);
    }

    [Fact]
    public async Task It_moves_no_floor()
    {
        await using var studio = await WorkedStudio.Create();
        var cursor = (await studio.Get("/v1/floor-changes?since=2027-01-01T00:00:00Z&limit=1000")).Json.GetProperty("next").GetString();
        await studio.Has("/v1/scenarios/rent", Rent);
        Assert.Equal(0, (await studio.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items").GetArrayLength());
    }
}
