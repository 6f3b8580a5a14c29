using System.Text;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Designs;

public sealed class DesignBatchTests
{
    private const string Path = "/v1/designs/batch", Json = "application/json", Ndjson = "application/x-ndjson", Csv = "text/csv";

    [Theory]
    [InlineData(Ndjson, "")]
    [InlineData(Csv, "")]
    [InlineData(Csv, "?dialect=semicolon")]
    public async Task What_is_exported_and_not_edited_changes_nothing_when_it_comes_back(string format, string query)
    {
        await using var studio = await ARichStudio();
        var export = await Export(studio, format, query);
        Assert.Equal(format, export.ContentType);
        var before = await All(studio);
        var answer = (await Post(studio, format, export.Text, query)).Json;
        Assert.Equal("""{"created":0,"changed":0,"unchanged":5}""", answer.GetProperty("summary").GetRawText());
        Assert.Equal(before, await All(studio));

        // An empty store gets the same designs from it.
        await using var other = new Studio();
        await other.Has("/v1/profiles/main", Sample.Rich);
        Assert.Equal("""{"created":5,"changed":0,"unchanged":0}""",
            (await Post(other, format, export.Text, query)).Json.GetProperty("summary").GetRawText());
        Assert.Equal((await Export(studio, Csv, "")).Text, (await Export(other, Csv, "")).Text);
    }

    [Fact]
    public async Task An_edited_cell_changes_just_that_design()
    {
        await using var studio = await ARichStudio();
        var sheet = (await Export(studio, Csv, "")).Text.Replace("\r\nsimple,Simple,main,4,", "\r\nsimple,Simple,main,5,", StringComparison.Ordinal);
        var answer = (await Post(studio, Csv, sheet)).Json;
        Assert.Equal(["RB-014 unchanged 1", "box unchanged 1", "names unchanged 1", "simple changed 2", "tricky unchanged 1"],
            answer.GetProperty("items").EnumerateArray().Select(one =>
                $"{one.GetProperty("sku").GetString()} {one.GetProperty("result").GetString()} {one.GetProperty("revision").GetRawText()}"));
        Assert.Equal("5", (await studio.Get("/v1/designs/simple")).Json.GetProperty("making").GetProperty("piecesPerDay").GetRawText());
    }

    [Fact]
    public async Task A_column_that_a_sheet_lacks_is_left_as_it_is_stored_and_an_empty_cell_takes_away()
    {
        await using var studio = await ARichStudio();
        Assert.Equal(200, (await Post(studio, Csv, "sku,name,soldShare\nRB-014,New name,\n")).Status);
        var design = (await studio.Get("/v1/designs/RB-014")).Json;
        Assert.Equal(("New name", 3), (design.GetProperty("name").GetString(), design.GetProperty("making").GetProperty("steps").GetArrayLength()));
        Assert.False(design.TryGetProperty("soldShare", out _));
    }

    [Fact]
    public async Task All_or_nothing_with_every_fault_at_its_line()
    {
        await using var studio = await ARichStudio();
        var before = await All(studio);
        var sheet = await Post(studio, Csv,
            "sku,profile,minutesPerPiece\nnew,main,30\nbad key,main,30\nn2,main,x\nn3,main,-1\nn4,main,30,5\nnew,main,31\n");
        Assert.Equal([" 6"], Faults(sheet.IsProblem(400, "unreadable-request"))); // a row with too many cells is not a row; that comes first
        sheet = await Post(studio, Csv, "sku,profile,minutesPerPiece\nnew,main,30\nbad key,main,30\nn2,main,x\nn3,main,-1\nnew,main,31\n");
        Assert.Equal(["sku 3", "minutesPerPiece 4", "minutesPerPiece 5", " 6"], Faults(sheet.IsProblem(422, "invalid-input")));
        var lines = await Post(studio, Ndjson,
            "{\"key\":\"new\",\"profile\":\"main\",\"making\":{\"minutesPerPiece\":30}}\n\n{\"profile\":\"main\",\"making\":{}}\n{\"key\":\"n5\"\n");
        Assert.Equal(["# 4"], Faults(lines.IsProblem(400, "unreadable-request")));
        lines = await Post(studio, Ndjson,
            "{\"key\":\"new\",\"profile\":\"main\",\"making\":{\"minutesPerPiece\":30}}\n\n{\"profile\":\"main\",\"making\":{}}\n");
        Assert.Equal(["#/key 3", "#/making 3"], Faults(lines.IsProblem(422, "invalid-input")));
        var array = await studio.Post(Path,
            """[{"key":"new","profile":"main","making":{"minutesPerPiece":30}},{"key":"n6","profile":"nope","making":{"minutesPerPiece":30}},{"key":"n7","profile":"main","making":{"minutesPerPiece":30},"materials":[{"material":"nope","quantity":1}]}]""");
        Assert.Equal(["#/1/profile 1", "#/2/materials/0/material 1"], Faults(array.IsProblem(422, "unknown-reference")));
        var taken = await studio.Post(Path, """[{"key":"new","profile":"main","making":{"minutesPerPiece":30},"aliases":["R B / 14"]}]""");
        Assert.Equal(["#/0 1"], Faults(taken.IsProblem(409, "in-use")));
        Assert.Equal(before, await All(studio));
        (await studio.Get("/v1/designs/new")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_sheet_or_a_body_that_is_none_is_refused()
    {
        await using var studio = await ARichStudio();
        Assert.Equal(["Profil", "sku"], (await Post(studio, Csv, "Profil,name\nmain,x\n")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["steps"], (await Post(studio, Csv, "sku,steps\nsimple,{}\n")).IsProblem(422, "invalid-input").Pointers);
        (await Post(studio, "text/plain", "x")).IsProblem(415, "media-type");
        (await studio.Post(Path, "{}")).IsProblem(400, "unreadable-request");
        Assert.Equal("""{"items":[],"summary":{"created":0,"changed":0,"unchanged":0}}""", (await studio.Post(Path, "[]")).Text);
    }

    [Fact]
    public async Task A_thousand_designs_are_one_write()
    {
        await using var studio = await ARichStudio();
        var cursor = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        var body = string.Concat(Enumerable.Range(0, 1000)
            .Select(i => $$"""{"key":"T-{{i}}","profile":"main","making":{"minutesPerPiece":{{i + 1}} } }""" + "\n"));
        Assert.Equal(1000, (await Post(studio, Ndjson, body)).Json.GetProperty("summary").GetProperty("created").GetInt32());
        var times = (await Export(studio, Ndjson, "")).Text.TrimEnd().Split('\n').Select(line => JsonDocument.Parse(line).RootElement)
            .Where(one => one.GetProperty("key").GetString()!.StartsWith("T-", StringComparison.Ordinal))
            .Select(one => one.GetProperty("savedAt").GetString()).Distinct();
        Assert.Single(times);
        // no channel, no price yet
        Assert.Equal(0, (await studio.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items").GetArrayLength());
    }

    private static async Task<Studio> ARichStudio()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/designs/simple",
            """{"name":"Simple","profile":"main","making":{"piecesPerDay":4,"goodShare":0.9,"setupMinutes":10,"runSize":5},"seconds":{"price":3.125}}""");
        await studio.Has("/v1/designs/tricky",
            """{"name":"=1+2;\"quoted\", 'and'","profile":"main","making":{"minutesPerPiece":0.000001},"materials":[{"name":"a; b, \"c\"","amount":1234.5}]}""");
        await studio.Has("/v1/designs/names", """{"profile":"main","making":{"piecesPerBenchDay":2.5},"aliases":["R B / 14","=x","a;b","\"q\""]}""");
        await studio.Has("/v1/designs/box", """{"name":"'apostrophe","profile":"main","making":{"steps":[{"handsOnMinutes":3}]}}""");
        return studio;
    }

    private static Task<Answer> Post(Studio studio, string type, string body, string query = "") =>
        studio.SendBytes("POST", Path + query, Encoding.UTF8.GetBytes(body), type);

    private static Task<Answer> Export(Studio studio, string format, string query) => studio.Get("/v1/designs" + query, null, ("Accept", format));

    private static async Task<string> All(Studio studio) => (await studio.Get("/v1/designs?limit=1000")).Text;

    private static IEnumerable<string> Faults(Answer problem) => problem.Json.GetProperty("errors").EnumerateArray()
        .Select(error => (Name: error.TryGetProperty("pointer", out var pointer) ? pointer.GetString()
            : error.TryGetProperty("parameter", out var parameter) ? parameter.GetString()
            : "", Line: error.GetProperty("line").GetInt64()))
        .OrderBy(error => error.Line).Select(error => $"{error.Name} {error.Line}");

    [Theory]
    [InlineData("=SUM(A1)")]
    [InlineData("'=SUM(A1)")]
    [InlineData("'''+1")]
    [InlineData("'@x")]
    [InlineData("'")]
    [InlineData("'plain")]
    [InlineData("-5 \"quoted\"; and, more")]
    [InlineData("  spaces around  ")]
    public async Task Every_name_survives_a_sheets_round_trip(string name)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Put("/v1/designs/RB-014",
            System.Text.Json.JsonSerializer.Serialize(new { name, profile = "main", making = new { piecesPerDay = 4 } }));
        foreach (var dialect in new[] { "", "?dialect=semicolon" })
        {
            var sheet = await studio.Get("/v1/designs" + dialect, null, ("Accept", "text/csv"));
            var back = await studio.SendBytes("POST", "/v1/designs/batch" + dialect, System.Text.Encoding.UTF8.GetBytes(sheet.Text), "text/csv");
            Assert.Equal((200, 1), (back.Status, back.Json.GetProperty("summary").GetProperty("unchanged").GetInt32()));
        }

        Assert.Equal(name, (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("name").GetString());
    }

    [Fact]
    public async Task A_sheet_of_a_yen_studio_writes_no_cents()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", "{\"currency\":\"JPY\",\"calendar\":{\"weeksPerYear\":50,\"daysPerWeek\":5,\"hoursPerDay\":8}}");
        await studio.Has("/v1/designs/Y", "{\"profile\":\"main\",\"making\":{\"piecesPerDay\":4},\"materials\":[{\"name\":\"box\",\"amount\":150}],"
            + "\"seconds\":{\"share\":0.5,\"price\":900}}");
        var sheet = (await studio.Get("/v1/designs", null, ("Accept", "text/csv"))).Text;
        Assert.Contains("\"\"amount\"\":150,", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain(".00", sheet, StringComparison.Ordinal);
    }
}
