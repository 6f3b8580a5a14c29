using PriceFloor.Api.Tests.Scenarios;
using Xunit;

namespace PriceFloor.Api.Tests.WhatIfs;

/// <summary>What is wrong with a change is said at the change, with its own code, and all of it at once.</summary>
public sealed class WhatIfFaultTests(WhatIfTests.Worked worked) : IClassFixture<WhatIfTests.Worked>
{
    [Theory]
    [InlineData("""{"of":"nothing","at":"/x","to":1}""", "unknown-reference", "/of")]
    [InlineData("""{"of":"design:main","at":"/x","to":1}""", "unknown-reference", "/of")]
    [InlineData("""{"of":"channel:*x","at":"/x","to":1}""", "unknown-reference", "/of")]
    [InlineData("""{"of":"price:RB-014/nowhere","at":"/price","to":1}""", "unknown-reference", "/of")]
    [InlineData("""{"of":"main","at":"/expenses/99/amount","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/expenses/Bench Rent/amount","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/expenses/01/amount","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"calendar","to":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/calendar/weeks","to":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/expenses/-","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/expenses/-/amount","to":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/revision","to":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"RB-014","at":"/profile","to":"other"}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","merge":{"savedAt":"2027-01-01T00:00:00Z"}}""", "leads-nowhere", "/merge")]
    [InlineData("""{"of":"price:RB-014/gallery","at":"/price","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"","remove":true}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"main","at":"/currency","by":2}""", "not-a-number", "/at")]
    [InlineData("""{"of":"main","at":"/pay","by":2}""", "not-a-number", "/at")]
    [InlineData("""{"of":"main","at":"/calendar","plus":2}""", "not-a-number", "/at")]
    [InlineData("""{"of":"web","at":"/fees/card/maximum","by":2}""", "not-a-number", "/at")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear"}""", "exactly-one", "")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","to":1,"by":2}""", "exactly-one", "")]
    [InlineData("""{"of":"main","to":1}""", "required", "/at")]
    [InlineData("""{"of":"main","at":"/name","merge":{}}""", "unexpected", "/at")]
    [InlineData("""{"of":"main","merge":3}""", "wrong-type", "/merge")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","to":1,"ends":"never"}""", "unexpected", "/ends")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","to":1,"together":"x"}""", "unexpected", "/together")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","by":{"low":2,"high":1}}""", "out-of-order", "/by")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","to":{"low":47,"high":48}}""", "out-of-order", "/to")]
    [InlineData("""{"of":"main","at":"/materials/*/price","to":{"low":1,"high":2}}""", "required", "/to")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","to":60}""", "out-of-range", "")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","by":2}""", "out-of-range", "")]
    [InlineData("""{"of":"main","at":"/calendar/weeksPerYear","to":"many"}""", "not-a-number", "")]
    [InlineData("""{"of":"main","at":"/calendar/benchShare","to":0.123456789}""", "too-many-decimals", "")]
    [InlineData("""{"of":"main","at":"/expenses/0","to":{"amount":1,"per":"month","rent":true}}""", "unknown-property", "")]
    [InlineData("""{"of":"main","at":"/expenses/0","to":[]}""", "wrong-type", "")]
    [InlineData("""{"of":"main","at":"/expenses/0/per","to":"decade"}""", "not-one-of", "")]
    [InlineData("""{"of":"main","at":"/currency","to":"EUR"}""", "currency-mismatch", "")]
    [InlineData("""{"of":"channel:web","at":"/currency","to":"EUR"}""", "currency-mismatch", "")]
    [InlineData("""{"of":"main","at":"/materials/clear-rod","remove":true}""", "unknown-material", "")]
    [InlineData("""{"of":"price:RB-014/web","at":"/price","to":58.001}""", "too-many-decimals", "")]
    public async Task A_change_that_cannot_be_made_says_why(string change, string code, string at)
    {
        var answer = await worked.Studio.Post("/v1/what-ifs", $$"""{"profile":"main","scenarios":[{"changes":[]},{"changes":[{{change}}]}]}""");
        answer.IsProblem(422, "invalid-input");
        var error = Assert.Single(answer.Json.GetProperty("errors").EnumerateArray());
        Assert.Equal((code, "#/scenarios/1/changes/0" + at), (error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString()));
    }

    [Theory]
    [InlineData("/expenses/Bench Rent/amount", "No item of the list is named \"Bench Rent\", but there is \"Bench rent\"; case counts.")]
    [InlineData("/materials/clear rod/price", "No item of the list is named \"clear rod\", but there is \"clear-rod\"; case counts.")]
    [InlineData("/calendar/weeksPerYeer", "\"weeksPerYeer\" is not a property there that can change (\"weeksPerYear\" is).")]
    public async Task A_place_that_leads_nowhere_names_the_nearest(string at, string detail)
    {
        var answer = await worked.Studio.Post("/v1/what-ifs",
            $$"""{"profile":"main","scenarios":[{"changes":[]},{"changes":[{"of":"main","at":"{{at}}","to":2}]}]}""");
        Assert.Equal(detail, Assert.Single(answer.Json.GetProperty("errors").EnumerateArray()).GetProperty("detail").GetString());
    }

    [Fact]
    public async Task Two_lines_of_one_name_are_ambiguous_and_so_is_a_key_of_two_documents()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/channels/main", """{"sells":"retail","currency":"USD"}""");
        var answer = await studio.Post("/v1/what-ifs", """
            {"profile":"main","scenarios":[{"changes":[
              {"of":"profile:main","at":"/expenses/-","to":{"name":"Bench rent","amount":1,"per":"year"}},
              {"of":"profile:main","at":"/expenses/Bench rent/amount","by":2},
              {"of":"main","at":"/name","to":"x"}]}]}
            """);
        answer.IsProblem(422, "invalid-input");
        Assert.Equal(["ambiguous-name #/scenarios/0/changes/1/at", "ambiguous-name #/scenarios/0/changes/2/of"],
            answer.Json.GetProperty("errors").EnumerateArray().Select(one => $"{one.GetProperty("code")} {one.GetProperty("pointer")}"));
    }

    [Fact]
    public async Task Every_fault_of_every_scenario_is_reported_at_once()
    {
        var answer = await worked.Studio.Post("/v1/what-ifs", """
            {"profile":"main","scenarios":[
              {"changes":[{"of":"main","at":"/calendar/weeksPerYear","to":60},{"of":"main","at":"/nothing","to":1}]},
              {"changes":[{"of":"nobody","at":"/nothing","to":1}]}]}
            """);
        Assert.Equal(["#/scenarios/0/changes/0", "#/scenarios/0/changes/1/at", "#/scenarios/1/changes/0/of"],
            answer.Json.GetProperty("errors").EnumerateArray().Select(one => one.GetProperty("pointer").GetString()));
    }

    [Fact]
    public async Task A_fault_of_the_document_stands_at_the_last_change_that_touched_its_place()
    {
        var answer = await worked.Studio.Post("/v1/what-ifs", """
            {"profile":"main","scenarios":[{"changes":[{"of":"main","at":"/calendar/weeksPerYear","by":1.1},
              {"of":"main","at":"/soldShare","to":0.9},{"of":"main","at":"/calendar/weeksPerYear","by":1.1}]}]}
            """); // 46 x 1.21 = 55.66
        var error = Assert.Single(answer.Json.GetProperty("errors").EnumerateArray());
        Assert.Equal("#/scenarios/0/changes/2", error.GetProperty("pointer").GetString());
        Assert.StartsWith("profile:main/calendar/weeksPerYear: ", error.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nine_scenarios_none_or_more_than_200_changes_are_refused()
    {
        var many = string.Join(',', Enumerable.Repeat("""{"of":"main","at":"/calendar/weeksPerYear","by":1}""", 101));
        (await worked.Studio.Post("/v1/what-ifs", """{"profile":"main","scenarios":[]}""")).IsProblem(422, "invalid-input");
        var nine = string.Join(',', Enumerable.Repeat("""{"changes":[]}""", 9));
        (await worked.Studio.Post("/v1/what-ifs", $$"""{"profile":"main","scenarios":[{{nine}}]}"""))
            .IsProblem(422, "invalid-input");
        (await worked.Studio.Post("/v1/what-ifs", $$"""{"profile":"main","scenarios":[{"changes":[{{many}}]},{"changes":[{{many}}]}]}"""))
            .IsProblem(422, "invalid-input");
        Assert.Equal(200, (await worked.Studio.Post("/v1/what-ifs", $$"""{"profile":"main","scenarios":[{"changes":[{{many}}]}]}""")).Status);
    }

    [Fact]
    public async Task Together_changes_may_go_too_far_although_none_does_alone()
    {
        const string More = """{"changes":[{"of":"main","at":"/calendar/weeksPerYear","by":1.1}]}""";
        var answer = await worked.Studio.Post("/v1/what-ifs", $$"""{"profile":"main","scenarios":[{{More}},{{More}}],"combined":true}""");
        answer.IsProblem(422, "invalid-input");
        Assert.Equal("#/combined", answer.Json.GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    [Fact]
    public async Task A_profile_that_is_not_stored_is_an_unknown_reference() =>
        (await worked.Studio.Post("/v1/what-ifs", """{"profile":"nobody","scenarios":[{"changes":[]}]}""")).IsProblem(422, "unknown-reference");
}
