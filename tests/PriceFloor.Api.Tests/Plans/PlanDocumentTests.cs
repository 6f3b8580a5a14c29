using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>Plans as documents.</summary>
public sealed class PlanDocumentTests
{
    [Fact]
    public async Task It_is_kept_in_revisions_with_its_defaults()
    {
        await using var studio = await Shop();
        var made = await studio.Put("/v1/plans/2027", Sample.Plan);
        Assert.Equal((201, "/v1/plans/2027", "\"1\""), (made.Status, made["Location"], made["ETag"]));
        Assert.Equal((200, "\"1\""), ((await studio.Put("/v1/plans/2027", Sample.Plan)).Status, (await studio.Get("/v1/plans/2027"))["ETag"]));
        Assert.Equal((200, "\"1\""), await StatusAndTag(studio, (await studio.Get("/v1/plans/2027")).Text)); // what GET gave can be PUT back
        var plan = (await studio.Get("/v1/plans/2027")).Json;
        Assert.Equal(("false", "0", "[]"), (plan.GetProperty("steady").GetRawText(), plan.GetProperty("hoursKeptBack").GetRawText(),
            plan.GetProperty("terms").GetRawText()));
        Assert.Equal("""{"cash":0.00,"taxSetAside":0.00,"salesTaxHeld":0.00,"owedToUs":[],"stock":[]}""", plan.GetProperty("opening").GetRawText());
        Assert.Equal("\"2\"", (await studio.Put("/v1/plans/2027", Sample.Plan.Replace("600", "500", StringComparison.Ordinal)))["ETag"]);
        Assert.Equal(2, (await studio.Get("/v1/plans/2027/revisions")).Json.GetProperty("items").GetArrayLength());
        Assert.Equal(600, (await studio.Get("/v1/plans/2027/revisions/1")).Json.GetProperty("lines")[0].GetProperty("units").GetInt32());
        Assert.Equal(204, (await studio.Delete("/v1/plans/2027")).Status);
        (await studio.Get("/v1/plans/2027/months")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task The_order_of_seasons_does_not_count_and_their_names_may_be_anything()
    {
        await using var studio = await Shop();
        const string Two = """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":1,"season":"b/~ \"x\""}],"seasons":{""",
            One = """ "b/~ \"x\"":[1,0,0,0,0,0,0,0,0,0,0,0]""", Other = """ "a":[1,1,1,1,1,1,1,1,1,1,1,2]""";
        Assert.Equal(201, (await studio.Put("/v1/plans/a", Two + One + "," + Other + "}}")).Status);
        Assert.Equal("\"1\"", (await studio.Put("/v1/plans/a", Two + Other + "," + One + "}}"))["ETag"]);
        Assert.Equal(200, (await studio.Get("/v1/plans/a/months")).Status);
    }

    [Fact]
    public async Task What_it_names_is_in_use()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/designs/SPARE", Sample.Pendant);
        await studio.Has("/v1/channels/spare", Sample.Shop);
        await studio.Has("/v1/plans/p", """
            {"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":1}],"terms":[{"channel":"spare"}],
             "opening":{"stock":[{"sku":"SPARE","pieces":3}]}}
            """);
        foreach (var path in new[] { "/v1/designs/SPARE", "/v1/channels/spare" })
            Assert.Contains("\"usedBy\":[{\"kind\":\"plan\",\"key\":\"p\"}]", (await studio.Delete(path)).IsProblem(409, "in-use").Text,
                StringComparison.Ordinal);
        (await studio.Delete("/v1/profiles/main")).IsProblem(409, "in-use");
        await studio.Delete("/v1/plans/p");
        Assert.Equal(204, (await studio.Delete("/v1/designs/SPARE")).Status);
    }

    [Fact]
    public async Task An_alias_is_stored_as_the_key_and_a_listed_price_is_looked_up_when_it_is_computed()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/designs/ST-1", """{"profile":"main","making":{"piecesPerDay":8},"aliases":["stud"]}""");
        await studio.Has("/v1/plans/p", """{"profile":"main","lines":[{"sku":"stud","channel":"web","units":12}]}""");
        Assert.Equal("ST-1", (await studio.Get("/v1/plans/p")).Json.GetProperty("lines")[0].GetProperty("sku").GetString());
        var unlisted = (await studio.Get("/v1/plans/p/months")).IsProblem(422, "cannot-compute");
        Assert.Equal("no-price", unlisted.Json.GetProperty("reason").GetString());
        await studio.Has("/v1/designs/ST-1/prices/web", """{"price":30}""");
        Assert.Equal(200, (await studio.Get("/v1/plans/p/months")).Status);
        Assert.Equal(12m, (await studio.Get("/v1/plans/p/months?lines=true")).Json.GetProperty("months").EnumerateArray()
            .Sum(month => month.GetProperty("lines")[0].GetDecimal()));
    }

    [Fact]
    public async Task A_sheet_of_its_lines_comes_back()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/plans/p", Sample.Plan);
        var sheet = await studio.Get("/v1/sheets/plan-lines");
        Assert.Equal("plan,sku,channel,price,units,season\r\np,RB-014,web,,600,gifts\r\n", sheet.Text);
        var more = sheet.Text.Replace("600", "640", StringComparison.Ordinal);
        var put = await studio.SendBytes("PUT", "/v1/sheets/plan-lines", System.Text.Encoding.UTF8.GetBytes(more), "text/csv");
        Assert.True(put.Status == 200, put.Text);
        var plan = (await studio.Get("/v1/plans/p")).Json;
        Assert.Equal(640, plan.GetProperty("lines")[0].GetProperty("units").GetInt32());
        Assert.Equal("[4,5,6,6,8,6,5,5,7,10,19,19]", plan.GetProperty("seasons").GetProperty("gifts").GetRawText()); // what the sheet has not stays
    }

    [Fact]
    public async Task It_is_as_it_was_at_any_moment()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/plans/p", Sample.Plan);
        studio.Clock.Advance(TimeSpan.FromDays(2));
        await studio.Has("/v1/plans/p", Sample.Plan.Replace("600", "1200", StringComparison.Ordinal));
        Assert.Equal(600m, await Sold(studio, "/v1/plans/p/months?lines=true&asOf=2027-01-03T00:00:00Z"));
        Assert.Equal(1200m, await Sold(studio, "/v1/plans/p/months?lines=true"));
        (await studio.Get("/v1/plans/p/months?asOf=2027-01-01T00:00:00Z")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_key_held_to_profiles_finds_plans_of_others_not_there()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/GLOBE", """{"profile":"other","making":{"piecesPerDay":4}}""");
        await studio.Has("/v1/plans/own", Sample.Plan);
        await studio.Has("/v1/plans/theirs", """{"profile":"other","lines":[{"sku":"GLOBE","channel":"web","price":60,"units":3}]}""");
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read","write"],"profiles":["main"]}""");
        var held = studio.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal(["own"], (await studio.Get("/v1/plans", held)).Json.GetProperty("items").EnumerateArray()
            .Select(plan => plan.GetProperty("key").GetString()!));
        Assert.Equal(200, (await studio.Get("/v1/plans/own/months", held)).Status);
        foreach (var path in new[] { "", "/months", "/months.svg", "/months.html", "/revisions", "/revisions/1" })
            (await studio.Get("/v1/plans/theirs" + path, held)).IsProblem(404, "not-found");
        (await studio.Post("/v1/plan-months", """{"plan":"theirs"}""", held)).IsProblem(422, "unknown-reference");
        (await studio.Put("/v1/plans/theirs", Sample.Plan, held)).IsProblem(409, "in-use");
        (await studio.Delete("/v1/plans/theirs", held)).IsProblem(404, "not-found");
        (await studio.Put("/v1/plans/new", """{"profile":"main","lines":[{"sku":"GLOBE","channel":"web","units":3}]}""", held))
            .IsProblem(422, "unknown-reference");
    }

    private static async Task<decimal> Sold(Studio studio, string path) => (await studio.Get(path)).Json.GetProperty("months").EnumerateArray()
        .Sum(month => month.GetProperty("lines")[0].GetDecimal());

    private static async Task<(int, string?)> StatusAndTag(Studio studio, string plan)
    {
        var answer = await studio.Put("/v1/plans/2027", plan);
        return (answer.Status, answer["ETag"]);
    }

    private static async Task<Studio> Shop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        return studio;
    }
}
