using Xunit;

namespace PriceFloor.Api.Tests.Statements;

public sealed class ReadingRuleTests
{
    [Fact]
    public async Task Rules_are_documents_like_the_others()
    {
        await using var studio = new Studio();
        var first = await studio.Put("/v1/reading-rules/main",
            """{"rules":[{"textHas":"rent","least":"100.50","to":"business","costKind":"rent"}]}""");
        var same = await studio.Put("/v1/reading-rules/main", """{"rules":[{"to":"business","costKind":"rent","textHas":"rent","least":100.5}]}""");
        var second = await studio.Put("/v1/reading-rules/main", """{"name":"Ours","rules":[]}""", headers: ("If-Match", "\"1\""));

        Assert.Equal((201, 200, 200), (first.Status, same.Status, second.Status));
        Assert.Equal(("\"1\"", "\"1\"", "\"2\""), (first["ETag"], same["ETag"], second["ETag"]));
        Assert.Contains("\"rules\":[{\"textHas\":\"rent\",\"least\":100.5,\"costKind\":\"rent\",\"to\":\"business\"}]", first.Text,
            StringComparison.Ordinal);
        Assert.Equal(2, (await studio.Get("/v1/reading-rules/main/revisions")).Json.GetProperty("items").GetArrayLength());
        var given = (await studio.Get("/v1/reading-rules/main")).Text;
        // the answer of GET is put back
        Assert.Equal((200, "\"2\""), ((await studio.Put("/v1/reading-rules/main", given)) is var again ? again.Status : 0, again["ETag"]));
        Assert.Equal(204, (await studio.Delete("/v1/reading-rules/main")).Status);
    }

    [Theory]
    [InlineData("""{"rules":[{"textHas":"a","textMatches":"b","to":"sale"}]}""", "#/rules/0/textMatches", "unexpected")]
    [InlineData("""{"rules":[{"to":"sale"}]}""", "#/rules/0", "required")]
    [InlineData("""{"rules":[{"textHas":"  ","to":"sale"}]}""", "#/rules/0/textHas", "required")]
    [InlineData("""{"rules":[{"textHas":"a"}]}""", "#/rules/0/to", "required")]
    [InlineData("""{"rules":[{"textHas":"a","to":"pocket-money"}]}""", "#/rules/0/to", "not-one-of")]
    [InlineData("""{"rules":[{"paid":"out","least":5,"most":4,"to":"household"}]}""", "#/rules/0/most", "out-of-order")]
    [InlineData("""{"rules":[{"textHas":"a","to":"sale","costKind":"rent"}]}""", "#/rules/0/costKind", "unexpected")]
    [InlineData("""{"rules":[{"textHas":"a","to":"sale","businessShare":0.5}]}""", "#/rules/0/businessShare", "unexpected")]
    [InlineData("""{"rules":[{"textHas":"a","to":"household","tracedTo":"sale"}]}""", "#/rules/0/tracedTo", "unexpected")]
    [InlineData("""{"rules":[{"textHas":"a","to":"household","incomeKind":"net"}]}""", "#/rules/0/incomeKind", "unexpected")]
    [InlineData("""{"rules":[{"textHas":"a","to":"sale","timesAYear":10}]}""", "#/rules/0/timesAYear", "unexpected")]
    [InlineData("""{"rules":[{"textHas":"a","to":"household","timesAYear":0}]}""", "#/rules/0/timesAYear", "out-of-range")]
    [InlineData("""{"rules":[{"textHas":"a","to":"household","timesAYear":2.5}]}""", "#/rules/0/timesAYear", "too-many-decimals")]
    [InlineData("""{"rules":[{"textHas":"a","to":"sale"},{"textMatches":"(a+","to":"sale"}]}""", "#/rules/1/textMatches", "bad-pattern")]
    [InlineData("""{"rules":[{"textMatches":"(a)\\1","to":"sale"}]}""", "#/rules/0/textMatches", "bad-pattern")]
    [InlineData("""{"rules":[{"textHas":"a","to":"household","businessShare":1.2}]}""", "#/rules/0/businessShare", "out-of-range")]
    public async Task A_fault_of_a_rule_is_reported_at_its_place(string body, string pointer, string code)
    {
        await using var studio = new Studio();
        var answer = (await studio.Put("/v1/reading-rules/main", body)).IsProblem(422, "invalid-input");

        Assert.Equal([(pointer, code)], answer.Pointers.Zip(answer.Codes));
    }

    [Fact]
    public async Task A_new_rule_moves_no_floor()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var before = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        await studio.Has("/v1/reading-rules/main", """{"rules":[]}""");

        var after = await studio.Get("/v1/floor-changes?since=" + before);
        Assert.Equal(0, after.Json.GetProperty("items").GetArrayLength());
    }
}
