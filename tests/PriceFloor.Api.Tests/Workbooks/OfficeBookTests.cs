using System.Globalization;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>The workbook after a spreadsheet program has saved it in its own way.</summary>
public sealed class OfficeBookTests
{
    [Theory]
    [InlineData(false, false)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public async Task A_workbook_that_a_spreadsheet_has_saved_changes_nothing(bool isStrict, bool isInline)
    {
        await using var studio = await AWholeStudio();
        var (file, tag) = await studio.Workbook();
        var stored = await studio.Send(new OfficeBook(file, isStrict, isInline).Saved());

        Assert.True(stored.Status == 200, stored.Text);
        Assert.Equal((0, 0), (Count(stored, "created"), Count(stored, "changed")));
        Assert.True(stored.Json.GetProperty("items").GetArrayLength() > 20);
        Assert.Equal(tag, (await studio.Workbook()).Tag);
    }

    [Fact]
    public async Task What_was_calculated_in_it_is_stored_as_it_was_shown()
    {
        await using var studio = await AWholeStudio();
        var before = (await studio.Get("/v1/profiles/main")).Json.GetProperty("materials").EnumerateArray()
            .ToDictionary(line => line.GetProperty("material").GetString()!, line => line.GetProperty("price").GetDecimal());
        var book = new OfficeBook((await studio.Workbook()).File);
        book.Multiply("stock", "price", 1.12);
        var stored = await studio.Send(book.Saved());

        Assert.True(stored.Status == 200, stored.Text);
        // "Glass up 12 %": 38 becomes 42.56, which the file has as 42.560000000000002
        Assert.Contains(38m, before.Values);
        var after = (await studio.Get("/v1/profiles/main")).Json.GetProperty("materials").EnumerateArray().ToList();
        Assert.All(after, line => Assert.Equal(before[line.GetProperty("material").GetString()!] * 1.12m, line.GetProperty("price").GetDecimal()));
        Assert.Equal(["main"], stored.Json.GetProperty("items").EnumerateArray()
            .Where(item => item.GetProperty("result").GetString() == "changed").Select(item => item.GetProperty("key").GetString()));
    }

    [Fact]
    public void The_other_library_reads_the_same_in_what_was_saved()
    {
        var file = Book.Of(("equipment", ["profile|name|cost|deductible", "main|Kiln & more|3200.5|TRUE"]),
            ("limits", ["profile|name", "main|kiln"]));
        var saved = Book.Read(new OfficeBook(file).Saved());

        Assert.Equal(["limits", "equipment"], saved.Keys);
        Assert.Equal("main|Kiln & more|3200.5|True", string.Join('|',
            saved["equipment"][1].Where(cell => cell is not null).Select(cell => Convert.ToString(cell, CultureInfo.InvariantCulture))));
    }

    private static int Count(Answer answer, string result) => answer.Json.GetProperty("items").EnumerateArray()
        .Count(item => item.GetProperty("result").GetString() == result);

    /// <summary>Days, shares, words and texts that a spreadsheet might take for something else.</summary>
    private static async Task<Studio> AWholeStudio()
    {
        var studio = await WorkedStudio.Create();
        var profile = (await studio.Get("/v1/profiles/main")).Json;
        var changed = System.Text.Json.Nodes.JsonNode.Parse(profile.GetRawText())!.AsObject();
        changed["equipment"]!.AsArray().Add(JsonSerializer.Deserialize<System.Text.Json.Nodes.JsonNode>("""
            {"name":"=1+1","cost":1999.99,"inService":"2026-02-28","depreciation":{"method":"straight-line","lifeYears":7.5}}
            """));
        await studio.Has("/v1/profiles/main", changed.ToJsonString());
        await studio.Has("/v1/reading-rules/main",
            """{"rules":[{"textMatches":"=(rod|frit), \"x\" _x0041_","paid":"out","least":0.1,"to":"business"}]}""");
        return studio;
    }
}
