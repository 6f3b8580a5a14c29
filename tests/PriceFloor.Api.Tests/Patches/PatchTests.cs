using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.Patches;

/// <summary>A part of a document changes; the rest stays, and the whole is still checked.</summary>
public sealed class PatchTests
{
    [Fact]
    public async Task Members_are_replaced_objects_merged_lists_replaced_whole_and_null_gives_the_default_back()
    {
        await using var studio = await AStudio();
        var patched = await Patch(studio, "/v1/channels/fair",
            """{"name":"Fair","stall":{"cost":210},"fees":[{"name":"reader","rate":0.02,"of":"paid"}],"costPerPiece":null}""");
        Assert.Equal((200, "\"2\""), (patched.Status, patched["ETag"]));
        var fair = (await studio.Get("/v1/channels/fair")).Json;
        Assert.Equal(patched.Text, (await studio.Get("/v1/channels/fair")).Text);
        Assert.Equal("Fair", fair.GetProperty("name").GetString());
        var stall = fair.GetProperty("stall");
        Assert.Equal((210m, 30m), (stall.GetProperty("cost").GetDecimal(), stall.GetProperty("pieces").GetDecimal()));
        Assert.Equal("""[{"name":"reader","rate":0.02,"of":"paid"}]""", Bare(fair.GetProperty("fees").GetRawText()));
        Assert.Equal(0m, fair.TryGetProperty("costPerPiece", out var cost) ? cost.GetDecimal() : 0m);
    }

    [Fact]
    public async Task Nothing_new_appends_no_revision()
    {
        await using var studio = await AStudio();
        foreach (var patch in new[] { "{}", """{"name":"Fair, outdoors"}""", """{"key":"other","revision":9,"savedAt":"2027-01-02T09:00:00Z"}""" })
            Assert.Equal("\"1\"", (await Patch(studio, "/v1/channels/fair", patch))["ETag"]);
    }

    [Fact]
    public async Task The_result_is_checked_as_a_whole_and_faults_are_told_at_their_place_in_it()
    {
        await using var studio = await AStudio();
        foreach (var (patch, status, slug, pointer) in new[]
        {
            ("""{"fees":[{"name":"reader","rate":2.4,"of":"paid"}]}""", 422, "invalid-input", "#/fees/0/rate"),
            ("""{"currency":null}""", 422, "invalid-input", "#/currency"),
            ("""{"sells":5}""", 400, "unreadable-request", "#/sells"),
            ("""{"stall":{"costs":5}}""", 400, "unreadable-request", "#/stall/costs"),
            ("""{"stal":null}""", 400, "unreadable-request", "#/stal"),
            ("""{"stall":{"costs":null}}""", 400, "unreadable-request", "#/stall/costs"),
        })
        {
            var refused = (await Patch(studio, "/v1/channels/fair", patch)).IsProblem(status, slug);
            var fault = refused.Json.GetProperty("errors")[0];
            Assert.Equal((patch, pointer, false), (patch, fault.GetProperty("pointer").GetString(), fault.TryGetProperty("line", out _)));
        }

        Assert.Equal(1, (await studio.Get("/v1/channels/fair")).Json.GetProperty("revision").GetInt64());
    }

    [Fact]
    public async Task A_body_that_is_no_patch_is_refused_with_what_to_send()
    {
        await using var studio = await AStudio();
        foreach (var body in new[] { "", "[]", "5", "null", "{\"a\":1,\"a\":2}", "{\"a\":1" })
            (await Patch(studio, "/v1/channels/fair", body)).IsProblem(400, "unreadable-request");
        var typed = (await studio.SendBytes("PATCH", "/v1/channels/fair", "{}"u8.ToArray(), "application/json")).IsProblem(415, "media-type");
        Assert.Equal("application/merge-patch+json", typed["Accept-Patch"]);
    }

    [Fact]
    public async Task It_changes_what_is_there_and_only_the_revision_that_was_read()
    {
        await using var studio = await AStudio();
        (await Patch(studio, "/v1/channels/none", "{}")).IsProblem(404, "not-found");
        (await Patch(studio, "/v1/channels/fair", """{"name":"A"}""", ("If-Match", "\"2\""))).IsProblem(412, "stale-revision");
        Assert.Equal(200, (await Patch(studio, "/v1/channels/fair", """{"name":"A"}""", ("If-Match", "\"1\""))).Status);
        await studio.Send("DELETE", "/v1/channels/fair", null);
        (await Patch(studio, "/v1/channels/fair", """{"name":"B"}""")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task What_others_use_stays_and_exact_figures_stay_exact()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/profiles/main", """
            {"currency":"USD","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8},
            "materials":[{"material":"clear-rod","unit":"kg","price":38.123456}]}
            """);
        await studio.Has("/v1/designs/BD-1",
            """{"profile":"main","making":{"minutesPerPiece":5},"materials":[{"material":"clear-rod","quantity":0.1}]}""");
        (await Patch(studio, "/v1/profiles/main", """{"materials":[]}""")).IsProblem(409, "in-use");
        Assert.Equal(200, (await Patch(studio, "/v1/profiles/main", """{"calendar":{"hoursPerDay":7.5}}""")).Status);
        var main = (await studio.Get("/v1/profiles/main")).Json;
        Assert.Equal("38.123456", main.GetProperty("materials")[0].GetProperty("price").GetRawText());
        Assert.Equal((48m, 7.5m), (main.GetProperty("calendar").GetProperty("weeksPerYear").GetDecimal(),
            main.GetProperty("calendar").GetProperty("hoursPerDay").GetDecimal()));
        (await Patch(studio, "/v1/designs/BD-1", """{"profile":"nobody"}""")).IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task Plans_scenarios_and_layouts_of_statements_change_in_part_too()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/2027",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":5}],"opening":{"cash":10,"taxSetAside":4},"reserve":3}""");
        await studio.Has("/v1/scenarios/dear", """{"name":"Dear","profile":"main","changes":[]}""");
        await studio.Has("/v1/statement-layouts/card", """{"dateColumn":"Booked","dialect":"semicolon"}""");
        var plan = await Patch(studio, "/v1/plans/2027", """{"opening":{"cash":20},"reserve":null}""");
        Assert.Equal((200, "\"2\"", 20m, 4m, 0m), (plan.Status, plan["ETag"], plan.Json.GetProperty("opening").GetProperty("cash").GetDecimal(),
            plan.Json.GetProperty("opening").GetProperty("taxSetAside").GetDecimal(), plan.Json.GetProperty("reserve").GetDecimal()));
        Assert.Equal(["#/lines/0/sku"], (await Patch(studio, "/v1/plans/2027", """{"lines":[{"sku":"none","channel":"web","units":5}]}"""))
            .IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal("Dearer", (await Patch(studio, "/v1/scenarios/dear", """{"name":"Dearer"}""")).Json.GetProperty("name").GetString());
        var layout = (await Patch(studio, "/v1/statement-layouts/card", """{"dateColumn":"Date"}""")).Json;
        Assert.Equal(("Date", "semicolon"), (layout.GetProperty("dateColumn").GetString(), layout.GetProperty("dialect").GetString()));
    }

    [Fact]
    public async Task A_key_that_may_not_read_learns_the_revision_and_nothing_that_it_did_not_send()
    {
        await using var studio = await AStudio();
        using var writer = await studio.ClientFor("write");
        var patched = await studio.SendBytes("PATCH", "/v1/channels/fair", """{"name":"A"}"""u8.ToArray(), "application/merge-patch+json", writer);
        Assert.Equal((204, "\"2\"", ""), (patched.Status, patched["ETag"], patched.Text));
    }

    private static string Bare(string fees) => fees.Replace(",\"fixed\":0.00", "", StringComparison.Ordinal);

    private static Task<Answer> Patch(Studio studio, string path, string patch, params (string, string)[] headers) =>
        studio.SendBytes("PATCH", path, Encoding.UTF8.GetBytes(patch), "application/merge-patch+json", headers: headers);

    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.Has("/v1/channels/fair", """
            {"name":"Fair, outdoors","sells":"retail","currency":"USD","fees":[{"name":"reader","rate":0.05,"of":"paid"}],"costPerPiece":1.2,
            "stall":{"cost":195,"pieces":30,"timesAYear":8}}
            """);
        return studio;
    }
}
